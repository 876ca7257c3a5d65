import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { arrange } from '../../../src/engine/arranging/arrange';
import { bed, box, desk, door, fitted, readingsOf, request, room } from './homes';
import { brokenRules } from '../../../src/engine/arranging/brokenRules';
import { checkArrangement } from '../../../src/engine/arranging/check/checkArrangement';
import { random } from '../../../src/engine/algebra/random';
import { smallHome } from '../../support/planner/smallHome';
import type { ArrangePiece, ArrangeRequest } from '../../../src/engine/arranging/request';
import type { Put } from '../../../src/engine/arranging/place';

/** What the checker need not know: preferences, the map, and which rooms a person allows. */
const NOT_CHECKED = ['head-under-window', 'near-radiator', 'wardrobe-front', 'unsupported', 'wrong-room'];

const put = ({ id, level, at, angle }: ArrangePiece): Put => ({ id, level, at, angle });

describe('the second look at an arrangement', () => {
  test('shares no code with the search: from outside its folder it takes types alone', () => {
    const folder = new URL('../../../src/engine/arranging/check/', import.meta.url);
    const imports = readdirSync(folder).flatMap((name) =>
      [...readFileSync(new URL(name, folder), 'utf8').matchAll(/^import (.*) from '(.*)';$/gm)].map(
        ([, what, from]) => ({ name, what, from }),
      ),
    );
    expect(imports.length).toBeGreaterThan(5);
    for (const { name, what, from } of imports)
      expect(from.startsWith('./') || what.startsWith('type '), `${name}: ${from}`).toBe(true);
  });

  test('passes every answer of the planner', () => {
    let answers = 0;
    for (let seed = 600; seed < 612; seed++) {
      const home = smallHome(random(seed), {
        pieces: 1 + (seed % 5),
        step: 0.3,
        sizes: [3, 4.2],
        fixtures: true,
      });
      const proposal = arrange(home);
      for (const { faults } of [proposal, ...proposal.alternatives]) {
        answers++;
        expect(faults, `seed ${seed}`).toEqual([]);
      }
    }
    expect(answers).toBeGreaterThan(20);
  });

  // In these the bare room hardly has the way that is asked for, or hardly the least one.
  test.each([
    [40_721, 5],
    [40_814, 2],
    [41_024, 2],
  ])('fault: an answer in a room that hardly has the way was refused (seed %i)', (seed, pieces) => {
    const shape = { pieces, fixtures: true, step: 0.25, sizes: [3, 4.4] as [number, number] };
    const proposal = arrange(smallHome(random(seed), shape));
    for (const { faults } of [proposal, ...proposal.alternatives]) expect(faults).toEqual([]);
  });

  test('agrees with the rules about furniture thrown into rooms', () => {
    const draw = random(77);
    let [bad, agreed, judged] = [0, 0, 0];
    for (let n = 0; n < 60; n++) {
      const home = smallHome(random(640 + (n % 12)), { pieces: 2, fixtures: true });
      const places = home.pieces.map((piece) => ({
        ...put(piece),
        at: [draw.between(0.4, 3), draw.between(0.4, 3)] as const,
        angle: 90 * draw.below(4),
      }));
      const rules = places.flatMap((place) =>
        brokenRules(home)(place, places).filter(({ kind }) => !NOT_CHECKED.includes(kind)),
      );
      const faults = checkArrangement(home, places);
      judged++;
      if (rules.length > 0) bad++;
      if (rules.length > 0 === faults.length > 0) agreed++;
    }
    expect(bad).toBeGreaterThan(30);
    // Millimetres about a tolerance may be told either way.
    expect(agreed).toBeGreaterThanOrEqual(judged - 1);
  });
});

describe('each fault is found', () => {
  const survey = fitted(readingsOf((x, y) => 0.1 + 0.01 * x + 0.005 * y, [-1, -1, 9, 5]));
  const free = { left: 0, right: 0, foot: 0 };
  const inRoom = (more: Partial<ArrangeRequest>): ArrangeRequest =>
    request({ fitted: survey, rooms: [room('r1', box(0, 0, 4, 4))], ...more });
  const faults = (home: ArrangeRequest) =>
    checkArrangement(home, home.pieces.map(put)).map(({ rule }) => rule);

  test.each<[string, string, Partial<ArrangeRequest>]>([
    ['half outside', 'outside', { pieces: [bed({ at: [0.2, 3], access: free })] }],
    ['off the wall', 'wall', { pieces: [bed({ at: [2, 2] })] }],
    [
      'no room at its side',
      'access',
      { rooms: [room('r1', box(0, 0, 1.4, 4))], pieces: [bed({ at: [0.45, 3] })] },
    ],
    [
      'on a chimney breast',
      'fixture',
      {
        fixtures: [{ id: 'f', level: 'l1', kind: 'chimney', outline: box(1.4, 3.6, 2.6, 4), front: null }],
        pieces: [bed({ at: [2, 3] })],
      },
    ],
    [
      'on a landing',
      'door',
      { openings: [door('r1', 0, 1)], pieces: [desk({ at: [1.4, 0.5], access: free })] },
    ],
    [
      'in the sweep of a leaf',
      'door',
      { openings: [door('r1', 0, 1)], pieces: [desk({ at: [2.05, 0.92], access: free })] },
    ],
    [
      'a cot at a radiator',
      'heat',
      {
        fixtures: [{ id: 'f', level: 'l1', kind: 'radiator', outline: box(0, 2, 0.1, 3), front: null }],
        pieces: [bed({ kind: 'cot', size: [0.6, 1.2], at: [0.95, 3], access: free })],
      },
    ],
    [
      'a cot at a window',
      'window',
      {
        openings: [{ ...door('r1', 2, 0), kind: 'window', width: 1 }],
        pieces: [bed({ kind: 'cot', size: [0.6, 1.2], at: [2.2, 3.4], access: free })],
      },
    ],
    [
      'one on the other',
      'piece',
      { pieces: [bed({ at: [2, 3], access: free }), desk({ at: [2.2, 3.7], access: free })] },
    ],
    [
      'a way shut',
      'way',
      {
        rooms: [room('r1', box(0, 0, 2, 4))],
        openings: [door('r1', 0, 0.2, { swing: 'out' }), door('r1', 2, 0.2, { swing: 'out' })],
        pieces: [bed({ kind: 'other', at: [0.9, 2], size: [1.8, 0.5], uses: [], access: free })],
      },
    ],
    [
      'no window to escape by',
      'escape',
      {
        rooms: [room('r1', box(0, 0, 1.8, 4))],
        openings: [door('r1', 0, 0.2, { swing: 'out' }), { ...door('r1', 2, 0.4), kind: 'window', width: 1 }],
        pieces: [bed({ kind: 'other', at: [0.9, 3], size: [1.8, 0.4], uses: [], access: free })],
      },
    ],
  ])('%s: %s', (_, rule, more) => {
    expect(faults(inRoom(more))).toContain(rule);
  });

  test('and a bed where it may stand has none', () => {
    expect(faults(inRoom({ pieces: [bed({ at: [2, 3] })] }))).toEqual([]);
  });
});
