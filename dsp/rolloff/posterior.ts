/** 5, 50 and 95 % of a posterior. */
export interface Quantiles {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** Masses over a line of equal cells; reads quantiles by linear interpolation. */
export class MassLine {
  private readonly mass: Float64Array;
  private readonly perUnit: number;
  private total = 0;

  constructor(
    private readonly from: number,
    to: number,
    private readonly cell: number,
  ) {
    this.perUnit = 1 / cell;
    this.mass = new Float64Array(Math.ceil((to - from) / cell) + 1);
  }

  /** Adds `mass` spread evenly over `width` around `at`; what lies outside falls into the end cell. */
  add(at: number, width: number, mass: number): void {
    const start = (at - width / 2 - this.from) / this.cell;
    const count = Math.max(1, Math.round(width / this.cell));
    const first = Math.round(start);
    const last = this.mass.length - 1;
    for (let i = first; i < first + count; i++) {
      const cell = Math.min(Math.max(i, 0), last);
      this.mass[cell] = (this.mass[cell] ?? 0) + mass / count;
    }
    this.total += mass;
  }

  /** Adds masses[m] to the cell of values[places[m] + shift], as add does for one cell. */
  addPoints(values: Float64Array, places: Int32Array, shift: number, masses: Float64Array): void {
    const { mass, from, perUnit } = this;
    const last = mass.length - 1;
    let total = 0;
    for (let m = 0; m < places.length; m++) {
      const cell = Math.floor(((values[(places[m] ?? 0) + shift] ?? from) - from) * perUnit);
      const inside = cell < 0 ? 0 : cell > last ? last : cell;
      const own = masses[m] ?? 0;
      mass[inside] = (mass[inside] ?? 0) + own;
      total += own;
    }
    this.total += total;
  }

  /** Where the shares `shares` (0 … 1, ascending) of the mass lie below. */
  quantiles(shares: readonly number[]): number[] {
    const { mass } = this;
    const found: number[] = [];
    let below = 0;
    let wanted = (shares[0] ?? 2) * this.total;
    for (let i = 0; i < mass.length && found.length < shares.length; i++) {
      const here = mass[i] ?? 0;
      if (here === 0) continue;
      while (found.length < shares.length && below + here >= wanted) {
        found.push(this.from + this.cell * (i + (wanted - below) / here));
        wanted = (shares[found.length] ?? 2) * this.total;
      }
      below += here;
    }
    return shares.map((_, k) => found[k] ?? this.from + this.cell * mass.length);
  }

  clear(): void {
    this.mass.fill(0);
    this.total = 0;
  }
}

/** Weights that sum to 1 from log weights. */
export function weightsOf(logs: Float64Array): Float64Array {
  let top = -Infinity;
  for (const value of logs) top = Math.max(top, value);
  let sum = 0;
  const weights = new Float64Array(logs.length);
  for (let i = 0; i < logs.length; i++) {
    const below = (logs[i] ?? 0) - top;
    // Nothing of these is left in the sum.
    if (below < -50) continue;
    weights[i] = Math.exp(below);
    sum += weights[i] ?? 0;
  }
  for (let i = 0; i < weights.length; i++) weights[i] = (weights[i] ?? 0) / sum;
  return weights;
}
