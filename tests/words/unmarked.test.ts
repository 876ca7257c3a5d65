import { describe, expect, it } from 'vitest';
import { addRoom } from '../../src/home/edits/add';
import { appliance, suspect } from '../support/suspects';
import { box, homeWith } from '../support/homes';
import {
  oddsWord,
  stepSentence,
  stepSentences,
  strengthText,
  tenthsText,
  unmarkedName,
  unmarkedParagraph,
  unmarkedSentence,
} from '../../src/words/unmarked';
import type { Place } from '../../src/engine/mapping/observations';

const named = (name: string, outline: [number, number][], use = 'living') =>
  addRoom({ level: 'l1', name, use: use as 'living', outline });

const home = homeWith(
  named('Kitchen', box(0, 0, 4, 3)),
  named('Hall', box(4, 0, 6, 3)),
  named('Garden', box(0, 3, 6, 8), 'grounds'),
);

/** Two places; the second was read twice. */
const fitted = { places: [{ ids: ['m1'] }, { ids: ['m2', 'm3'] }] as unknown as Place[] };

describe('where an unmarked source is', () => {
  const along = (a: [number, number], b: [number, number]) => unmarkedName(home, suspect({ path: [a, b] }));

  it('is said by the rooms at both sides of it', () => {
    expect(along([4, 0], [4, 3])).toBe('A current along the wall between Kitchen and Hall');
    expect(along([0, 3], [4, 3])).toBe('A current along the outer wall of Kitchen');
    expect(along([1, 1.5], [3, 1.5])).toBe('A current through Kitchen');
    expect(along([1, 5], [3, 5])).toBe('A current outside the rooms');
  });

  it('is said by the room where it is a place', () => {
    expect(unmarkedName(home, appliance(1, 1))).toBe('An appliance in Kitchen');
    expect(unmarkedName(home, suspect({ kind: 'point', path: [[5, 1]] }))).toBe(
      'A current that rises in Hall',
    );
    expect(unmarkedName(home, appliance(20, 20))).toBe('An appliance');
  });

  it('is said by the nearest room where it is a line outside', () => {
    const street = (x: number) =>
      suspect({
        origin: 'outside',
        path: [
          [x, -2],
          [x, 9],
        ],
      });
    expect(unmarkedName(home, street(9))).toBe('A line outside, beyond Hall');
    expect(unmarkedName(home, street(-5))).toBe('A line outside, beyond Kitchen');
  });
});

describe('what is said of an unmarked source', () => {
  it('has its strength, what it would explain and how likely it is, each with no more digits than it deserves', () => {
    expect(unmarkedSentence(home, fitted, suspect())).toBe(
      'A current along the wall between Kitchen and Hall: 0.6–1.4 A; would explain 3 readings; likely (7 in 10).',
    );
    expect(strengthText(home, appliance(1, 1))).toBe('0.031–0.094 µT at 1 m');
    expect(strengthText(home, suspect({ amperes: [4.4, 26.2] }))).toBe('4.4–26 A');
  });

  it('is never certain', () => {
    expect([0.5, 0.64, 0.66, 0.84, 0.96, 1].map(tenthsText)).toEqual(
      ['5', '6', '7', '8', '9', '9'].map((tenths) => `${tenths} in 10`),
    );
    expect([0.5, 0.7, 0.9].map(oddsWord)).toEqual(['as likely as not', 'likely', 'very likely']);
  });

  it('names a suspect and no fault, and leaves wiring to licensed practice', () => {
    const all = unmarkedParagraph(home, fitted, [suspect(), appliance(1, 1)]).join(' ');
    expect(all).toContain('suspects, and no fault is known');
    expect(stepSentence(suspect())).toMatch(/licensed electrician.*local code.*touch no wiring/i);
    expect(stepSentence(suspect({ origin: 'outside' }))).toContain('network operator');
    expect(stepSentences([suspect(), suspect(), appliance(1, 1)])).toHaveLength(2);
    expect(unmarkedParagraph(home, fitted, [])).toEqual([]);
  });
});
