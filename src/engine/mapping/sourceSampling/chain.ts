import { addFields } from './kernel';
import { ambientFloor } from './ambientFloor';
import { logDensity } from './remainder';
import { MOST_LATENTS, type Slot } from './slots';
import { noElements, type Elements } from './elements';
import type { Model } from './model';
import type { Random } from '../../algebra/random';
import type { Sample } from './samples';

/** Sites whose field is worked out together, before the fit there may rule a move out. */
const TOGETHER = 6;

/** One chain: its state, and the sums that its next move needs. */
export class Chain {
  readonly present: Uint8Array;
  readonly latents: Float64Array;
  floor = 0;
  remainder: number;
  logLikelihood = 0;

  private readonly fields: Float64Array[];
  private sum: Float64Array;
  private triedSum: Float64Array;
  private residuals: Float64Array;
  private triedResiduals: Float64Array;
  private readonly triedField: Float64Array;
  private triedLogLikelihood = 0;
  private readonly nothing: Float64Array;
  private readonly kept = new Float64Array(MOST_LATENTS);
  private readonly elements: Elements;
  private readonly densities: Float64Array;

  constructor(
    private readonly model: Model,
    private readonly chance: Random,
  ) {
    const { slots, sites, remainders, room } = model;
    const numbers = 6 * sites.xs.length;
    this.present = new Uint8Array(slots.length);
    this.latents = new Float64Array(slots.length * MOST_LATENTS);
    this.fields = slots.map(() => new Float64Array(numbers));
    this.sum = new Float64Array(numbers);
    this.triedSum = new Float64Array(numbers);
    this.triedField = new Float64Array(numbers);
    this.nothing = new Float64Array(numbers);
    this.residuals = new Float64Array(sites.xs.length);
    this.triedResiduals = new Float64Array(sites.xs.length);
    this.densities = new Float64Array(remainders.length);
    this.elements = noElements(room);
    this.remainder = remainders.length - 1;
    for (let i = 0; i < this.latents.length; i++) this.latents[i] = chance.normal();
    slots.forEach(({ probability }, j) => (this.present[j] = chance.next() < probability ? 1 : 0));
    this.floor = chance.normal();
    this.rebuild();
  }

  /** Fields and their sum from the latents alone: sums of differences drift by rounding. */
  rebuild(): void {
    const { sum } = this;
    sum.fill(0);
    this.present.forEach((there, j) => {
      const field = this.fields[j].fill(0);
      if (there) {
        this.write(j);
        addFields(this.elements, this.model.sites, 0, this.model.sites.xs.length, field);
      }
      for (let i = 0; i < sum.length; i++) sum[i] += field[i];
    });
    this.elements.count = 0;
    this.fits(this.nothing, this.floor, -Infinity);
    this.take();
  }

  /** Go on from a sample of the same sources. */
  goOnFrom({ sources, floor, remainder }: Sample): void {
    const { slots } = this.model;
    const there = new Map(sources.map(({ slot, latents }) => [slot, latents]));
    slots.forEach(({ key }, j) => {
      const latents = there.get(key);
      this.present[j] = latents ? 1 : 0;
      if (latents) this.latents.set(latents, j * MOST_LATENTS);
    });
    this.floor = floor;
    this.remainder = remainder;
    this.rebuild();
  }

  /** Where the chain is; its weight is for the caller to say. */
  sample(): Sample {
    const { floor, remainder, logLikelihood } = this;
    const sources = this.model.slots.flatMap(({ key, latents }, j) => {
      const at = j * MOST_LATENTS;
      return this.present[j] ? [{ slot: key, latents: [...this.latents.subarray(at, at + latents)] }] : [];
    });
    return { weight: 1, logLikelihood, remainder, floor, sources };
  }

  /** Go on from where another chain is. */
  copy(other: Chain): void {
    this.present.set(other.present);
    this.latents.set(other.latents);
    this.floor = other.floor;
    this.remainder = other.remainder;
    this.rebuild();
  }

  /**
   * One sweep at likelihood power `heat`: every source that is there is moved, some are born or die, one goes to another
   * wall, then the ambient floor and the remainder.
   */
  sweep(heat: number): void {
    const { slots } = this.model;
    for (let j = 0; j < slots.length; j++) if (this.present[j]) this.move(j, heat);
    const tries = 4 + (slots.length >> 2);
    for (let t = 0; t < tries; t++) this.birthOrDeath(this.chance.below(slots.length), heat);
    for (let t = 0; t < 3; t++) this.exchange(heat);
    this.moveFloor(heat);
    if (this.chance.next() < 0.3) this.drawRemainder(heat);
  }

  /**
   * A source that is there takes other latents: all drawn anew from the prior, or a preconditioned Crank–Nicolson step (Cotter,
   * Roberts, Stuart & White 2013), x′ = √(1 − b²)·x + b·ξ, of all or of one. Each leaves the prior as it is, so that the
   * likelihood alone accepts. The length b is drawn too: small near a fit, large far from it, and nothing to tune.
   */
  private move(j: number, heat: number): void {
    const { chance } = this;
    const { latents: count } = this.model.slots[j];
    const at = j * MOST_LATENTS;
    this.keep(at);
    const kind = chance.next();
    const b = kind < 0.15 ? 1 : Math.exp(-4 * chance.next());
    const a = Math.sqrt(1 - b * b);
    if (kind < 0.55) for (let k = 0; k < count; k++) this.step(at + k, a, b);
    else this.step(at + chance.below(count), a, b);
    this.write(j);
    if (!this.accept(j, 0, heat)) this.putBack(at);
  }

  private step(k: number, a: number, b: number): void {
    this.latents[k] = a * this.latents[k] + b * this.chance.normal();
  }

  /**
   * A source appears, its latents drawn from the prior, or goes (reversible jump: Green 1995; Geyer & Møller 1994). Either
   * way the slot is drawn alike and the prior's density cancels the draw's: likelihood and prior odds are left.
   */
  private birthOrDeath(j: number, heat: number): void {
    const { probability, latents: count } = this.model.slots[j];
    const at = j * MOST_LATENTS;
    const odds = Math.log(probability / (1 - probability));
    if (this.present[j]) {
      this.elements.count = 0;
      if (this.accept(j, -odds, heat)) this.present[j] = 0;
      return;
    }
    this.keep(at);
    for (let k = 0; k < count; k++) this.latents[at + k] = this.chance.normal();
    this.write(j);
    if (this.accept(j, odds, heat)) this.present[j] = 1;
    else this.putBack(at);
  }

  /** Two like slots exchange what is in them, so that a current goes to another wall with its size, phase and height. */
  private exchange(heat: number): void {
    const { slots } = this.model;
    const from = this.chance.below(slots.length);
    const to = this.chance.below(slots.length);
    if (!this.present[from] || this.present[to]) return;
    if (slots[from].latents !== slots[to].latents) return;
    const odds = ({ probability }: Slot) => Math.log(probability / (1 - probability));
    const [a, b] = [from * MOST_LATENTS, to * MOST_LATENTS];
    this.swap(a, b);
    this.write(to);
    const least = this.leastLogLikelihood(odds(slots[to]) - odds(slots[from]), heat);
    if (this.fits(this.fields[from], this.floor, least)) {
      this.fields[to].set(this.triedField);
      this.fields[from].fill(0);
      this.present[from] = 0;
      this.present[to] = 1;
      this.take();
    } else this.swap(a, b);
  }

  private swap(a: number, b: number): void {
    for (let k = 0; k < MOST_LATENTS; k++) {
      const kept = this.latents[a + k];
      this.latents[a + k] = this.latents[b + k];
      this.latents[b + k] = kept;
    }
  }

  private moveFloor(heat: number): void {
    const b = Math.exp(-3 * this.chance.next());
    const floor = Math.sqrt(1 - b * b) * this.floor + b * this.chance.normal();
    this.elements.count = 0;
    if (!this.fits(this.nothing, floor, this.leastLogLikelihood(0, heat))) return;
    this.floor = floor;
    this.take();
  }

  /** Gibbs: each remainder in proportion to its likelihood. */
  private drawRemainder(heat: number): void {
    const { remainders } = this.model;
    const { densities } = this;
    let most = -Infinity;
    for (let g = 0; g < remainders.length; g++) {
      densities[g] = logDensity(remainders[g], this.residuals);
      if (densities[g] > most) most = densities[g];
    }
    let total = 0;
    for (let g = 0; g < remainders.length; g++) total += Math.exp(heat * (densities[g] - most));
    let left = total * this.chance.next();
    let g = 0;
    for (; g < remainders.length - 1; g++) {
      left -= Math.exp(heat * (densities[g] - most));
      if (left < 0) break;
    }
    this.remainder = g;
    this.logLikelihood = densities[g];
  }

  /** Whether source j becomes what was written, prior odds apart; nothing written: it goes. */
  private accept(j: number, odds: number, heat: number): boolean {
    if (!this.fits(this.fields[j], this.floor, this.leastLogLikelihood(odds, heat))) return false;
    this.fields[j].set(this.triedField);
    this.take();
    return true;
  }

  /** Metropolis & Hastings with the chance drawn first: what a move's log-likelihood must exceed. */
  private leastLogLikelihood(odds: number, heat: number): number {
    return this.logLikelihood + (Math.log(this.chance.next()) - odds) / heat;
  }

  /**
   * Whether the log-likelihood with the written elements in place of the field `old` exceeds `least`. The squares of what is
   * left, whitened row by row, only grow: most moves are ruled out by a few sites, and the rest is not worked out.
   */
  private fits(old: Float64Array, floor: number, least: number): boolean {
    const { lns, remainders, sites } = this.model;
    const { elements, sum, triedSum, triedField, triedResiduals } = this;
    const { inverse, constant } = remainders[this.remainder];
    const ambient = ambientFloor(floor) ** 2;
    const most = 2 * (constant - least);
    let squares = 0;
    triedField.fill(0);
    for (let i = 0, at = 0, row = 0; i < lns.length; i++) {
      if (i % TOGETHER === 0)
        addFields(elements, sites, i, Math.min(i + TOGETHER, lns.length), triedField, at);
      let square = ambient;
      for (const end = at + 6; at < end; at++) {
        const part = sum[at] - old[at] + triedField[at];
        triedSum[at] = part;
        square += part * part;
      }
      triedResiduals[i] = lns[i] - 0.5 * Math.log(square);
      let whitened = 0;
      for (let k = 0; k <= i; k++, row++) whitened += inverse[row] * triedResiduals[k];
      squares += whitened * whitened;
      if (!(squares < most)) return false;
    }
    this.triedLogLikelihood = constant - 0.5 * squares;
    return true;
  }

  private take(): void {
    [this.sum, this.triedSum] = [this.triedSum, this.sum];
    [this.residuals, this.triedResiduals] = [this.triedResiduals, this.residuals];
    this.logLikelihood = this.triedLogLikelihood;
  }

  private write(j: number): void {
    this.elements.count = 0;
    this.model.slots[j].write(this.latents, j * MOST_LATENTS, this.elements);
  }

  private keep(at: number): void {
    for (let k = 0; k < MOST_LATENTS; k++) this.kept[k] = this.latents[at + k];
  }

  private putBack(at: number): void {
    for (let k = 0; k < MOST_LATENTS; k++) this.latents[at + k] = this.kept[k];
  }
}
