import { add, scale } from '../geometry/point';
import { AS_FOUND, dosesOf, isSupported, judge, sumOf, type Candidate } from './candidates';
import { standOf } from './stand';
import type { Plan } from './plan';
import type { Pose } from '../geometry/pose';

// Nobody places furniture more closely than this, metres.
const FINEST = 0.003;
const MOST_ROUNDS = 4;

// Homes keep places to a millimetre and angles to a hundredth of a degree: what is judged here is what will be kept.
const MILLIMETRES = 1000;
const HUNDREDTHS = 100;

/**
 * From the best of the tried places to the best near them: each piece in turn moves along its wall by ever halved steps as
 * long as its dose falls (`forAll`: and that of nobody who uses it rises) and every rule stays kept. Places come out in
 * whole millimetres.
 */
export function slide(plan: Plan, chosen: readonly Candidate[], step: number, forAll: boolean): Candidate[] {
  let places = [...chosen];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = places;
    places = places.reduce<Candidate[]>(
      (all, _, i) => all.with(i, slideOne(plan, all, i, step, forAll)),
      places,
    );
    if (places.every(({ cost }, i) => cost === before[i].cost)) break;
  }
  return places;
}

function slideOne(
  plan: Plan,
  places: readonly Candidate[],
  index: number,
  step: number,
  forAll: boolean,
): Candidate {
  const found = places[index];
  if (found.wall === AS_FOUND) return found;
  const others = places.filter((_, i) => i !== index).map(({ stand }) => stand);
  let best = shifted(plan, found, 0, others, Infinity) ?? found;
  if (best.cost === 0) return best;
  for (let by = step / 2; by >= FINEST; by /= 2) {
    best = [-by, by].reduce((lowest, along) => {
      const moved = shifted(plan, best, along, others, lowest.cost);
      const worse = forAll && moved?.doses.some((dose, i) => dose > lowest.doses[i]);
      return moved && !worse ? moved : lowest;
    }, best);
  }
  return best;
}

/** The same place so far along its wall; null where that costs too much, breaks a rule, or a preference that it kept. */
function shifted(
  plan: Plan,
  { stand, wall, breaks }: Candidate,
  along: number,
  others: readonly Candidate['stand'][],
  under: number,
): Candidate | null {
  const site = plan.site(stand.room);
  const ground = plan.ground(stand.room, stand.piece.height);
  const [x, y] = add(stand.pose.at, scale(site.walls[wall].along, along));
  const pose: Pose = {
    at: [rounded(x, MILLIMETRES), rounded(y, MILLIMETRES)],
    angle: rounded(stand.pose.angle, HUNDREDTHS) % 360,
  };
  const moved = standOf(stand.piece, stand.room, pose, stand.mirrored);
  const doses = dosesOf(moved, ground);
  const cost = sumOf(doses);
  if (cost >= under) return null;
  const verdict = judge(moved, site, [...plan.fixed, ...others], () => ({
    doses,
    supported: isSupported(moved, ground),
  }));
  if (verdict.broken || verdict.breaks.length > breaks.length) return null;
  const here = [moved, ...others.filter(({ room }) => room === stand.room)];
  if (plan.ways(stand.room).lost(here.map((one) => [one]))) return null;
  return { stand: moved, wall, cost, doses, breaks: verdict.breaks };
}

const rounded = (value: number, parts: number): number => Math.round(value * parts) / parts;
