import { arrange, type Alternative, type Proposal } from '../../src/engine/arranging/arrange';
import { fieldsOf } from '../../src/engine/dose/fieldAt';
import { furnishedHome } from '../support/generators/furnishedHome';
import { groundsOf, planOf } from '../../src/engine/arranging/plan';
import { inEachRoom, mostUsed, otherAnswers } from '../../src/engine/arranging/others';
import { random } from '../../src/engine/algebra/random';
import { smallHome, type SmallHome } from '../support/planner/smallHome';
import { search, solve, type Wishes } from '../../src/engine/arranging/solve';
import { tryEverything } from '../support/planner/tryEverything';
import type { Place } from '../support/planner/places';

const SHAPES: SmallHome[] = [
  { pieces: 1, fixtures: true },
  { pieces: 2 },
  { pieces: 2, fixtures: true },
  { pieces: 3, step: 0.3, sizes: [3, 4.2], fixtures: true },
  { pieces: 4, step: 0.4, sizes: [3.4, 4.6] },
  { pieces: 5, step: 0.5, sizes: [3.4, 4.6], fixtures: true },
];

/** Small homes in which the search and a planner that tries everything agree: on the least dose, or that nothing fits. */
export function equalToEverything(homes = 210): { homes: number; fitting: number; equal: number } {
  let [fitting, equal] = [0, 0];
  for (let i = 0; i < homes; i++) {
    const request = smallHome(random(20_000 + i), SHAPES[i % SHAPES.length]);
    const plan = planOf(request, groundsOf(request, fieldsOf(request.fitted)));
    const tried = tryEverything(request);
    if (tried.homeless) {
      if (plan.blocked.length > 0) equal++;
      continue;
    }
    const least = tried.least();
    const found = solve(plan, request.step, { budget: 1e6 });
    if (least) fitting++;
    if (least === null ? !found.chosen && found.proven : Math.abs(found.cost / least.cost - 1) < 1e-9)
      equal++;
  }
  return { homes, fitting, equal };
}

/** Homes in which the other answers cost what the best of all others by room and wall cost, one after the other. */
export function othersEqualEverything(homes = 60): { homes: number; equal: number } {
  let [tried, equal] = [0, 0];
  for (let i = 0; tried < homes && i < 3 * homes; i++) {
    const request = smallHome(random(30_000 + i), { pieces: 2, step: 0.25 });
    const plan = planOf(request, groundsOf(request, fieldsOf(request.fitted)));
    const hand = mostUsed(plan.hands);
    const searchFor = (wishes?: Wishes) => search(plan, request.step, { budget: 1e6 }, wishes);
    const best = plan.blocked.length === 0 ? searchFor().choose() : null;
    if (!best || !hand) continue;
    tried++;
    const rooms = inEachRoom(plan, { hand, rooms: request.rooms.map(({ id }) => id), best }, searchFor);
    const own = best[plan.hands.indexOf(hand)];
    const elsewhere = rooms.flatMap((offer) =>
      'chosen' in offer && offer.room !== own.stand.room
        ? [{ piece: hand.piece.id, differs: 'room' as const, chosen: offer.chosen, cost: offer.cost }]
        : [],
    );
    const others = otherAnswers(plan, { hand, best, elsewhere: elsewhere[0] ?? null }, searchFor);
    const everything = tryEverything(request);
    const at = ({ room, wall }: Pick<Place, 'room' | 'wall'>) => `${room} ${wall}`;
    const taken = [at({ room: own.stand.room, wall: own.wall })];
    const isBed = ({ piece }: Place) => piece.id === hand.piece.id;
    const same = others.every(({ chosen, cost }) => {
      const next = everything.least(
        (place) => !isBed(place) || (place.wall >= 0 && !taken.includes(at(place))),
      );
      const bed = chosen.find(({ stand }) => stand.piece.id === hand.piece.id)!;
      taken.push(at({ room: bed.stand.room, wall: bed.wall }));
      return next !== null && Math.abs(next.cost / cost - 1) < 1e-9;
    });
    if (same) equal++;
  }
  return { homes: tried, equal };
}

/** Answers of the planner, with what they give up where nothing fits, and those that the second look finds something wrong with. */
export function answersPass(answers = 5000): { answers: number; homes: number; faults: string[] } {
  const faults: string[] = [];
  let [seen, homes] = [0, 0];
  for (let seed = 40_000; seen < answers; seed++, homes++) {
    const step = 0.25;
    const request =
      seed % 3 === 0
        ? furnishedHome(random(seed), seed % 2 === 0 ? 2 : 5, step)
        : smallHome(random(seed), { ...SHAPES[seed % SHAPES.length], step, sizes: [3, 4.4] });
    for (const answer of all(arrange(request))) {
      seen++;
      if (answer.faults.length > 0)
        faults.push(`home ${seed}: ${answer.faults.map(({ piece, rule }) => `${piece} ${rule}`).join(', ')}`);
    }
  }
  return { answers: seen, homes, faults };
}

const all = (proposal: Proposal): Pick<Alternative, 'faults'>[] => [
  ...(proposal.pieces.length > 0 ? [proposal] : []),
  ...proposal.alternatives,
  ...(proposal.relaxed ? [proposal.relaxed.answer] : []),
];
