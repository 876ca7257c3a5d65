import { describe, expect, test } from 'vitest';
import { broken, clash, leastDose, type Place } from './reference';
import { arrange, type Answer } from '../../../src/engine/arranging/arrange';
import { brokenRules } from '../../../src/engine/arranging/brokenRules';
import { fieldsOf } from '../../../src/engine/dose/fieldAt';
import { planOf } from '../../../src/engine/arranging/plan';
import { random } from '../../../src/engine/algebra/random';
import { randomHome } from './randomHome';
import { solve } from '../../../src/engine/arranging/solve';
import type { ArrangeRequest } from '../../../src/engine/arranging/request';

const SEEDS = Array.from({ length: 40 }, (_, i) => 1000 + i);

/** The rules an answer breaks by the second planner's geometry, with the sides of the strips that suit best. */
function faults(request: ArrangeRequest, answer: Answer): number {
  const places = answer.pieces.map(({ id, room, at, angle }) => {
    const piece = request.pieces.find((one) => one.id === id)!;
    return [false, true].map((mirrored): Place => ({ piece, room, x: at[0], y: at[1], angle, mirrored }));
  });
  const combinations = places.reduce<Place[][]>(
    (all, ways) => all.flatMap((some) => ways.map((way) => [...some, way])),
    [[]],
  );
  return Math.min(
    ...combinations.map(
      (some) =>
        some.reduce((sum, place) => sum + broken(request, place).hard.length, 0) +
        some.filter((a, i) => some.some((b, j) => j > i && clash(a, b))).length,
    ),
  );
}

describe('bed and desk in small homes, against a planner that tries everything', () => {
  let fitting = 0;
  test.each(SEEDS)('seed %i', (seed) => {
    const request = randomHome(random(seed));
    const plan = planOf(request, fieldsOf(request.fitted));
    const least = leastDose(request);
    const found = plan.blocked.length > 0 ? null : solve(plan, request.step, { budget: 1e6 });
    if (least === null) {
      expect(found?.chosen ?? null).toBeNull();
      return;
    }
    fitting++;
    expect(found!.proven).toBe(true);
    expect(found!.cost / least).toBeCloseTo(1, 9);

    const proposal = arrange(request);
    for (const answer of [proposal, ...proposal.alternatives]) {
      expect(faults(request, answer)).toBe(0);
      for (const piece of answer.pieces) {
        const hard = brokenRules(request, piece, answer.pieces).filter(
          (rule) => !piece.breaks.some(({ kind }) => kind === rule.kind),
        );
        expect(hard).toEqual([]);
      }
    }
  });

  test('most of these homes have room for both', () => {
    expect(fitting).toBeGreaterThanOrEqual(30);
  });
});
