import { ambientFloor } from './ambientFloor';
import { addFields } from './kernel';
import { noElements, type Elements } from './elements';
import { solve } from '../../algebra/cholesky';
import type { Model } from './model';
import type { Sample, SourceSamples } from './samples';

/** A sample ready to be asked for ln B anywhere: its wires and dipoles, and its kriged remainder in dual form. */
export interface Ready {
  weight: number;
  remainder: number;
  elements: Elements;
  /** f², µT². */
  ambientSquare: number;
  /** The remainder at a place is offset + Σ pull·e^(−h/ρ) over the readings: s²·K⁻¹(ln v − ½ ln B²) each. */
  offset: number;
  pulls: Float64Array;
}

/** `then`: the wires and dipoles as they are to be, where that is otherwise than when the readings were taken. */
export function readySamples(
  model: Model,
  { samples }: SourceSamples,
  then?: (sources: Sample['sources']) => Elements,
): Ready[] {
  const { sites, lns, slots, remainders, room } = model;
  const byKey = new Map(slots.map((slot) => [slot.key, slot]));
  return samples.map(({ weight, remainder, floor, sources }) => {
    const elements = noElements(Math.max(1, room * sources.length));
    for (const { slot, latents } of sources) byKey.get(slot)?.write(Float64Array.from(latents), 0, elements);
    const field = new Float64Array(6 * sites.xs.length);
    addFields(elements, sites, 0, sites.xs.length, field);
    const ambientSquare = ambientFloor(floor) ** 2;
    const residuals = lns.map((ln, i) => {
      let square = ambientSquare;
      for (let k = 6 * i; k < 6 * i + 6; k++) square += field[k] * field[k];
      return ln - 0.5 * Math.log(square);
    });
    const { s, cholesky } = remainders[remainder];
    const pulls = solve(cholesky, residuals).map((dual) => s * s * dual);
    return {
      weight,
      remainder,
      elements: then ? then(sources) : elements,
      ambientSquare,
      offset: pulls.reduce((sum, pull) => sum + pull, 0),
      pulls,
    };
  });
}
