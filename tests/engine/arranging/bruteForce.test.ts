import { describe, expect, test } from 'vitest';
import { broken, clash } from '../../support/planner/rules';
import { arrange, type Answer } from '../../../src/engine/arranging/arrange';
import { brokenRules } from '../../../src/engine/arranging/brokenRules';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { Floor } from '../../support/planner/ways';
import { groundsOf, planOf } from '../../../src/engine/arranging/plan';
import { random } from '../../../src/engine/algebra/random';
import { smallHome, type SmallHome } from '../../support/planner/smallHome';
import { solve } from '../../../src/engine/arranging/solve';
import { tryEverything } from '../../support/planner/tryEverything';
import type { ArrangeRequest } from '../../../src/engine/arranging/request';
import type { Place } from '../../support/planner/places';

/** A room of the second planner. */
interface Walked {
  id: string;
  floor: Floor;
}

/** The rules an answer breaks by the second planner's geometry, with the sides of the strips that suit best. */
function faults(request: ArrangeRequest, floors: readonly Walked[], answer: Answer): number {
  const places = answer.pieces.map(({ id, room, at, angle }) => {
    const piece = request.pieces.find((one) => one.id === id)!;
    return [false, true].map((mirrored): Place => ({
      piece,
      room,
      x: at[0],
      y: at[1],
      angle,
      mirrored,
      wall: -1,
    }));
  });
  const combinations = places.reduce<Place[][]>(
    (all, ways) => all.flatMap((some) => ways.map((way) => [...some, way])),
    [[]],
  );
  // What nobody uses may stay however it stands.
  const stays = answer.pieces.filter(({ moves, before }) => !moves && before === null).map(({ id }) => id);
  const own = new Map(
    places
      .flat()
      .map((place) => [place, stays.includes(place.piece.id) ? 0 : broken(request, place).hard.length]),
  );
  const shut = (some: Place[]) =>
    floors.filter(({ id, floor }) => !floor.allows(some.filter(({ room }) => room === id))).length;
  return Math.min(
    ...combinations.map(
      (some) =>
        some.reduce((sum, place) => sum + own.get(place)!, 0) +
        some.filter((a, i) => some.some((b, j) => j > i && clash(request, a, b))).length +
        shut(some),
    ),
  );
}

/** Homes of so many pieces, with the seeds tried of them. */
const KINDS: [name: string, shape: SmallHome, seeds: number, fitting: number][] = [
  ['one piece', { pieces: 1, fixtures: true }, 8, 5],
  ['bed and desk', { pieces: 2 }, 14, 10],
  ['three pieces', { pieces: 3, step: 0.3, sizes: [3, 4.2], fixtures: true }, 7, 4],
  ['four pieces', { pieces: 4, step: 0.4, sizes: [3.4, 4.6] }, 5, 3],
  ['five pieces', { pieces: 5, step: 0.5, sizes: [3.4, 4.6], fixtures: true }, 5, 3],
];

describe.each(KINDS)(
  '%s in small homes, against a planner that tries everything',
  (_, shape, seeds, atLeast) => {
    let fitting = 0;
    test.each(Array.from({ length: seeds }, (__, i) => 1000 + i))('seed %i', (seed) => {
      const request = smallHome(random(seed), shape);
      const plan = planOf(request, groundsOf(request, fieldsOf(request.fitted)));
      const tried = tryEverything(request);
      expect(plan.blocked.map(({ id }) => id).includes(tried.homeless?.id ?? '')).toBe(
        tried.homeless !== null,
      );
      if (tried.homeless) return;
      const least = tried.least();
      const found = solve(plan, request.step, { budget: 1e6 });
      expect(found.proven).toBe(true);
      if (least === null) {
        expect(found.chosen).toBeNull();
        return;
      }
      fitting++;
      expect(found.cost / least.cost).toBeCloseTo(1, 9);

      const proposal = arrange(request);
      const floors = request.rooms.map(({ id }) => ({ id, floor: new Floor(request, id) }));
      for (const answer of [proposal, ...proposal.alternatives]) {
        expect(faults(request, floors, answer)).toBe(0);
        for (const piece of answer.pieces) {
          const hard = brokenRules(request)(piece, answer.pieces).filter(
            (rule) => !piece.breaks.some(({ kind }) => kind === rule.kind),
          );
          expect(hard).toEqual([]);
        }
      }
    });

    test('most of these homes have room for all', () => {
      expect(fitting).toBeGreaterThanOrEqual(atLeast);
    });
  },
);
