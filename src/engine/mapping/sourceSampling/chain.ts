import { addFields } from './kernel';
import { ambientFloor } from './ambientFloor';
import { logDensity } from './remainder';
import { MOST_LATENTS, type Slot } from './slots';
import { noElements, type Elements } from './elements';
import type { Model } from './model';
import type { Random } from '../../algebra/random';

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
      if (there) this.write(j, field);
      for (let i = 0; i < sum.length; i++) sum[i] += field[i];
    });
    this.logLikelihood = this.density(this.sum, this.floor, this.residuals);
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
    this.triedField.fill(0);
    this.write(j, this.triedField);
    if (!this.accept(j, this.triedField, 0, heat)) this.putBack(at);
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
      if (this.accept(j, this.nothing, -odds, heat)) this.present[j] = 0;
      return;
    }
    this.keep(at);
    for (let k = 0; k < count; k++) this.latents[at + k] = this.chance.normal();
    this.triedField.fill(0);
    this.write(j, this.triedField);
    if (this.accept(j, this.triedField, odds, heat)) this.present[j] = 1;
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
    this.triedField.fill(0);
    this.write(to, this.triedField);
    const tried = this.tryLikelihood(this.fields[from], this.triedField);
    if (this.accepted(tried, odds(slots[to]) - odds(slots[from]), heat)) {
      this.fields[to].set(this.triedField);
      this.fields[from].fill(0);
      this.present[from] = 0;
      this.present[to] = 1;
      this.take(tried);
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
    const tried = this.density(this.sum, floor, this.triedResiduals);
    if (!this.accepted(tried, 0, heat)) return;
    this.floor = floor;
    this.logLikelihood = tried;
    [this.residuals, this.triedResiduals] = [this.triedResiduals, this.residuals];
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

  private accept(j: number, field: Float64Array, odds: number, heat: number): boolean {
    const tried = this.tryLikelihood(this.fields[j], field);
    if (!this.accepted(tried, odds, heat)) return false;
    this.fields[j].set(field);
    this.take(tried);
    return true;
  }

  private tryLikelihood(old: Float64Array, field: Float64Array): number {
    const { sum, triedSum } = this;
    for (let i = 0; i < sum.length; i++) triedSum[i] = sum[i] - old[i] + field[i];
    return this.density(triedSum, this.floor, this.triedResiduals);
  }

  private take(logLikelihood: number): void {
    [this.sum, this.triedSum] = [this.triedSum, this.sum];
    [this.residuals, this.triedResiduals] = [this.triedResiduals, this.residuals];
    this.logLikelihood = logLikelihood;
  }

  private accepted(tried: number, odds: number, heat: number): boolean {
    const ratio = heat * (tried - this.logLikelihood) + odds;
    return ratio >= 0 || this.chance.next() < Math.exp(ratio);
  }

  /** ln of the likelihood, and what the sources leave of each reading's ln B. */
  private density(sum: Float64Array, floor: number, residuals: Float64Array): number {
    const { lns, remainders } = this.model;
    const ambient = ambientFloor(floor);
    for (let i = 0, at = 0; i < residuals.length; i++, at += 6) {
      const a = sum[at];
      const b = sum[at + 1];
      const c = sum[at + 2];
      const d = sum[at + 3];
      const e = sum[at + 4];
      const f = sum[at + 5];
      const square = ambient * ambient + a * a + b * b + c * c + d * d + e * e + f * f;
      residuals[i] = lns[i] - 0.5 * Math.log(square);
    }
    return logDensity(remainders[this.remainder], residuals);
  }

  private write(j: number, field: Float64Array): void {
    const { sites, slots } = this.model;
    this.elements.count = 0;
    slots[j].write(this.latents, j * MOST_LATENTS, this.elements);
    addFields(this.elements, sites, 0, sites.xs.length, field);
  }

  private keep(at: number): void {
    for (let k = 0; k < MOST_LATENTS; k++) this.kept[k] = this.latents[at + k];
  }

  private putBack(at: number): void {
    for (let k = 0; k < MOST_LATENTS; k++) this.latents[at + k] = this.kept[k];
  }
}
