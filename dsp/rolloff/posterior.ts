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

  /** Adds `mass` to the cell of `at`, as add does for a width of one cell. */
  addPoint(at: number, mass: number): void {
    const cell = Math.floor((at - this.from) * this.perUnit);
    const last = this.mass.length - 1;
    const inside = cell < 0 ? 0 : cell > last ? last : cell;
    this.mass[inside] = (this.mass[inside] ?? 0) + mass;
    this.total += mass;
  }

  /** Where the share `p` (0 … 1) of the mass lies below. */
  quantile(p: number): number {
    const wanted = p * this.total;
    let below = 0;
    for (let i = 0; i < this.mass.length; i++) {
      const here = this.mass[i] ?? 0;
      if (here > 0 && below + here >= wanted) {
        return this.from + this.cell * (i + (wanted - below) / here);
      }
      below += here;
    }
    return this.from + this.cell * this.mass.length;
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
