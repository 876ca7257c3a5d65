import { describe, expect, it } from 'vitest';
import { addFixture, addOpening, addPiece } from '../../src/home/edits/add';
import { setSettings } from '../../src/home/edits/setSettings';
import { ruleBook } from '../../src/engine/arranging/ruleBook';
import { ruleQuestion } from '../../src/home/questions/arrangeQuestion';
import { change } from '../../src/home/edits/change';
import type { Home } from '../../src/home/home';
import { brokenLines, brokenRuleText } from '../../src/words/brokenRules';
import { box, homeWith, room } from '../support/homes';

/** A bedroom with a door to a hall, a window and a radiator; a cot, a bed for two and a wardrobe. */
const furnished = (...more: Parameters<typeof homeWith>): Home =>
  homeWith(
    room(box(0, 0, 5, 4)),
    room(box(0, -2.1, 5, -0.1), 'passage'),
    change({ kind: 'room', id: 'r2' }, { name: 'Hall' }),
    addOpening({ room: 'r1', kind: 'door', wall: 0, offset: 0.3, width: 0.8 }),
    addOpening({ room: 'r1', kind: 'window', wall: 1, offset: 1.5, width: 1.2 }),
    addFixture({ level: 'l1', kind: 'radiator', outline: box(2, 3.9, 3, 4) }),
    addFixture({ level: 'l1', kind: 'wardrobe', outline: box(0, 2, 0.6, 4), front: 1 }),
    addPiece({ kind: 'cot', name: 'Cot', level: 'l1', at: [3.5, 1], size: [0.6, 1.2] }),
    addPiece({ kind: 'other', name: 'Chest', level: 'l1', at: [1.6, 3.7], size: [0.5, 0.5] }),
    addPiece({ kind: 'bed', name: 'Bed', level: 'l1', at: [2.5, 2.4], size: [0.9, 2] }),
    ...more,
  );

/** What is said of a piece where it is put. */
function said(home: Home, id: string, at: [number, number], angle = 0): string[] {
  const piece = { ...home.pieces[id]!, at, angle };
  const broken = ruleBook(ruleQuestion(home)).broken({ id, level: 'l1', at, angle });
  return broken.map((rule) => brokenRuleText(home, piece, rule));
}

describe('a broken rule', () => {
  it('names the door by where it leads', () => {
    expect(said(furnished(), 'p3', [0.7, 1.1])).toEqual(
      expect.arrayContaining(['The door to the hall would strike it.']),
    );
    expect(said(furnished(), 'p3', [1.3, 1.05])).toEqual(
      expect.arrayContaining(['It would stand before the door to the hall; 0.6 m is kept free there.']),
    );
  });

  it('says how near a cot stands, and what it keeps', () => {
    expect(said(furnished(), 'p1', [2.5, 2.9])).toEqual(
      expect.arrayContaining(['It would stand 0.40 m from the radiator; a cot keeps 0.6 m.']),
    );
    expect(said(furnished(), 'p1', [4.5, 2])).toEqual(
      expect.arrayContaining(['It would stand 0.20 m from the window; a cot keeps 0.6 m.']),
    );
    expect(said(furnished(), 'p1', [1.6, 2.75])).toEqual(
      expect.arrayContaining(['It would stand 0.10 m from the chest; a cot keeps 0.3 m.']),
    );
  });

  it('is told in the unit of the home', () => {
    const feet = furnished(setSettings({ lengthUnit: 'ft' }));
    expect(said(feet, 'p1', [2.5, 2.9])).toEqual(
      expect.arrayContaining(['It would stand 1 ft 4 in from the radiator; a cot keeps 2 ft.']),
    );
  });

  it('has the numbers of the home’s own rules', () => {
    const home = furnished();
    const wide = {
      ...home,
      settings: { ...home.settings, rules: { ...home.settings.rules, landing: 0.85 } },
    };
    expect(said(wide, 'p3', [1.3, 1.05])).toEqual(
      expect.arrayContaining(['It would stand before the door to the hall; 0.85 m is kept free there.']),
    );
    expect(said(home, 'p3', [0.8, 3])).toEqual(
      expect.arrayContaining(['It would stand before the built-in wardrobe; 0.7 m is kept free there.']),
    );
  });

  it('touches what it is not off at all', () => {
    const piece = furnished().pieces.p1!;
    const rule = { kind: 'cot-near-heat', with: 'f1', metres: 0 } as const;
    expect(brokenRuleText(furnished(), piece, rule)).toBe('It would touch the radiator; a cot keeps 0.6 m.');
  });

  it('is one sentence of every kind, with no id in it', () => {
    const home = furnished();
    const kinds = [
      'wrong-room',
      'outside-room',
      'on-fixture',
      'head-off-wall',
      'head-across-door',
      'back-off-wall',
      'before-door',
      'in-door-swing',
      'access',
      'cot-near-heat',
      'cot-near-window',
      'unsupported',
      'overlap',
      'access-taken',
      'cot-near-piece',
      'two-doubles',
      'no-way',
      'no-escape',
      'head-under-window',
      'near-radiator',
      'wardrobe-front',
      'crowded',
      'not-tried',
    ] as const;
    const things = [
      'r1',
      'd1',
      'f1',
      'p1',
      'p3',
      ...Object.keys(home.openings),
      ...Object.keys(home.fixtures),
      null,
    ];
    for (const kind of kinds)
      for (const thing of things) {
        const text = brokenRuleText(home, home.pieces.p3!, { kind, with: thing });
        expect(text).toMatch(/^[A-Z][^.]*(\.\d[^.]*)*\.$/);
        expect(text).not.toMatch(/\b[rpdfow]\d\b/);
      }
  });
});

describe('two lines beside the pointer', () => {
  const home = furnished();
  const long = { kind: 'before-door', with: Object.keys(home.openings)[0]! } as const;
  const other = { kind: 'unsupported', with: null } as const;
  const short = { kind: 'head-off-wall', with: null } as const;

  it('hold the first rule, and say how many more there are where a line is left', () => {
    expect(brokenLines(home, home.pieces.p3!, [short, long], 99)[0]).toContain('door');
    const lines = (broken: Parameters<typeof brokenLines>[2]) =>
      brokenLines(home, home.pieces.p3!, broken, 44);
    expect(lines([])).toEqual([]);
    expect(lines([short])).toEqual(['Its head has no wall behind it.']);
    expect(lines([other, short])).toEqual([
      'The map has no reading near enough there.',
      'And one more rule.',
    ]);
    expect(lines([other, short, long])[1]).toBe('And 2 more rules.');
    expect(lines([long, short])).toEqual([
      'It would stand before the door to the hall;',
      '0.6 m is kept free there.',
    ]);
  });
});
