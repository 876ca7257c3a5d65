import { ambientFloor } from './ambientFloor';
import { addFields } from './kernel';
import { noElements, type Elements } from './elements';
import { roomFor, sitesOf, slotsIn } from './model';
import type { SamplingQuestion } from './question';
import type { Slot } from './slots';
import type { SourceSamples } from './samples';

/** A sample taken apart: what each of its sources gives at the readings. */
export interface HeardSample {
  weight: number;
  sources: HeardSource[];
  /** f², µT². */
  ambientSquare: number;
  /** Sum of all squares at each place, µT²: contributions add as squares. */
  total: Float64Array;
}

export interface HeardSource {
  slot: Slot;
  elements: Elements;
  /** |F|² at each place, µT². */
  squares: Float64Array;
}

/** What every source of every sample gives at the places of the question. */
export function heardSamples(question: SamplingQuestion, { samples }: SourceSamples): HeardSample[] {
  const sites = sitesOf(question.places);
  const byKey = new Map(slotsIn(question).map((slot) => [slot.key, slot]));
  const room = roomFor(question.marked);
  return samples.map(({ weight, floor, sources }) => {
    const ambientSquare = ambientFloor(floor) ** 2;
    const total = new Float64Array(sites.xs.length).fill(ambientSquare);
    const heard = sources.flatMap(({ slot: key, latents }) => {
      const slot = byKey.get(key);
      if (!slot) return [];
      const elements = noElements(room);
      slot.write(Float64Array.from(latents), 0, elements);
      const squares = squaresOf(elements, sites);
      squares.forEach((square, i) => (total[i] += square));
      return [{ slot, elements, squares }];
    });
    return { weight, sources: heard, ambientSquare, total };
  });
}

/** |F|² of some wires and dipoles, µT². */
export function squaresOf(elements: Elements, sites: ReturnType<typeof sitesOf>): Float64Array {
  const field = new Float64Array(6 * sites.xs.length);
  addFields(elements, sites, 0, sites.xs.length, field);
  return sites.xs.map((_, i) => {
    let square = 0;
    for (let k = 6 * i; k < 6 * i + 6; k++) square += field[k] * field[k];
    return square;
  });
}
