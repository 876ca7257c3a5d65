import { minimiseBetween } from '../algebra/minimiseBetween';
import { CORRELATION } from './variogram';
import type { Lag } from './empiricalVariogram';
import type { Variogram, VariogramModel } from './variogram';

/** Ranges looked at before the best is refined: a weighted sum of squares may have more than one valley. */
const RANGES = 60;

/**
 * The variogram that fits the lags best: least Σ N/h² (γ̂ − γ)², the weights Cressie's (1985) come to where the model rises
 * from 0 in a line, nugget and sill not negative. Both are linear, so for each range they are solved and only the range is
 * searched (variable projection, Golub & Pereyra 1973), on `between` metres.
 */
export function fitVariogram(
  lags: readonly Lag[],
  model: VariogramModel,
  between: readonly [number, number],
): Variogram {
  const [low, high] = [Math.log(between[0]), Math.log(between[1])];
  const at = (logRange: number) => linearPart(lags, model, Math.exp(logRange));
  const step = (high - low) / RANGES;
  let best = low;
  for (let i = 1; i <= RANGES; i++) {
    const logRange = low + i * step;
    if (at(logRange).misfit < at(best).misfit) best = logRange;
  }
  const misfit = (logRange: number) => at(logRange).misfit;
  const near = minimiseBetween(misfit, Math.max(low, best - step), Math.min(high, best + step), SPAN);
  const logRange = Math.min(high, Math.max(low, levelled(misfit, near.at)));
  const { nugget, sill } = at(logRange);
  return { model, nugget, sill, range: Math.exp(logRange) };
}

/** Half the distance in ln range over which two misfits are weighed: wide enough that they differ by more than rounding. */
const SPAN = 1e-3;

/**
 * The place near a least one where the misfit is the same to both sides. A least value says where it is only to the root
 * of the rounding, and nearly equal readings have a shallow one: the fit would change with the unit.
 */
function levelled(misfit: (logRange: number) => number, near: number): number {
  let at = near;
  for (let i = 0; i < 4; i++) {
    const [left, middle, right] = [misfit(at - SPAN), misfit(at), misfit(at + SPAN)];
    const bend = left - 2 * middle + right;
    const move = bend > 0 ? (SPAN * (left - right)) / (2 * bend) : 0;
    if (Math.abs(move) > SPAN) return at;
    at += move;
  }
  return at;
}

/** Nugget and sill, neither negative, of least misfit for one range: a weighted line of γ̂ on 1 − ρ(h/range). */
function linearPart(lags: readonly Lag[], model: VariogramModel, range: number) {
  let [w, t, tt, g, tg] = [0, 0, 0, 0, 0];
  const terms = lags.map(({ pairs, distance, semivariance }) => {
    const weight = pairs / distance ** 2;
    const rise = 1 - CORRELATION[model](distance / range);
    w += weight;
    t += weight * rise;
    tt += weight * rise * rise;
    g += weight * semivariance;
    tg += weight * rise * semivariance;
    return { weight, rise, semivariance };
  });
  const misfit = (nugget: number, sill: number) =>
    terms.reduce(
      (sum, { weight, rise, semivariance }) => sum + weight * (semivariance - nugget - sill * rise) ** 2,
      0,
    );
  const both = w * tt - t * t;
  const sill = (w * tg - t * g) / both;
  const nugget = (g - sill * t) / w;
  // On a boundary one of the two is 0 and the other is solved alone.
  if (both > 1e-12 * w * tt && sill >= 0 && nugget >= 0)
    return { nugget, sill, misfit: misfit(nugget, sill) };
  const onlySill = { nugget: 0, sill: tg / tt, misfit: misfit(0, tg / tt) };
  const onlyNugget = { nugget: g / w, sill: 0, misfit: misfit(g / w, 0) };
  return onlySill.misfit <= onlyNugget.misfit ? onlySill : onlyNugget;
}
