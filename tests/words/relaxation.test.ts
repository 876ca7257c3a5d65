import { describe, expect, it } from 'vitest';
import { addPiece } from '../../src/home/edits/add';
import { setSettings } from '../../src/home/edits/setSettings';
import { relaxationClauses, relaxedSentence } from '../../src/words/relaxation';
import type { Relaxation } from '../../src/engine/arranging/relax';
import { box, homeWith, room } from '../support/homes';

const home = homeWith(
  room(box(0, 0, 5, 4)),
  addPiece({ kind: 'bed', name: 'Bed', level: 'l1', at: [1, 3], uses: [{ who: 'A' }] }),
  addPiece({ kind: 'desk', name: 'Desk', level: 'l1', at: [4, 3], uses: [{ who: 'A' }] }),
);
const strip = (piece: string, side: 'left' | 'right' | 'foot', to = 0.45): Relaxation => ({
  kind: 'strip',
  piece,
  side,
  from: 0.75,
  to,
});
const landing: Relaxation = { kind: 'landing', from: 0.6, to: 0.3 };

describe('what must be given up', () => {
  it.each<[Relaxation[], string[]]>([
    [[strip('p1', 'left')], ['the strip at one side of bed A is 0.45 m instead of 0.75 m']],
    [[strip('p1', 'foot')], ['the strip at the foot of bed A is 0.45 m instead of 0.75 m']],
    [
      [strip('p1', 'left'), strip('p1', 'right')],
      ['the strips at both sides of bed A are 0.45 m instead of 0.75 m'],
    ],
    [
      [strip('p1', 'right'), strip('p1', 'foot')],
      ['the strips at one side and the foot of bed A are 0.45 m instead of 0.75 m'],
    ],
    [
      [strip('p1', 'left', 0.6), strip('p1', 'foot')],
      [
        'the strip at one side of bed A is 0.60 m instead of 0.75 m',
        'the strip at the foot of bed A is 0.45 m instead of 0.75 m',
      ],
    ],
    [[strip('p2', 'foot')], ['the strip where one sits of desk B is 0.45 m instead of 0.75 m']],
    [[landing], ['the floor kept free before doors is 0.30 m instead of 0.60 m deep']],
    [[{ kind: 'path', from: 0.6, to: 0.5 }], ['the way through is 0.50 m instead of 0.60 m wide']],
    [[{ kind: 'desk-sideways' }], ['a desk stands with its side to the wall']],
  ])('%j', (changes, clauses) => expect(relaxationClauses(home, changes)).toEqual(clauses));

  it('is one sentence, of one piece or of several', () => {
    expect(relaxedSentence(home, [strip('p1', 'left')], 1)).toBe(
      'It fits if the strip at one side of bed A is 0.45 m instead of 0.75 m.',
    );
    expect(relaxedSentence(home, [strip('p1', 'left'), landing, { kind: 'desk-sideways' }], 2)).toBe(
      'All fit if the strip at one side of bed A is 0.45 m instead of 0.75 m, the floor kept free before doors is 0.30 m instead of 0.60 m deep and a desk stands with its side to the wall.',
    );
  });

  it('is in feet where lengths are', () => {
    const feet = homeWith(setSettings({ lengthUnit: 'ft' }));
    expect(relaxationClauses(feet, [landing])[0]).toContain('1 ft instead of 2 ft');
  });
});
