/** An exponential decay: ln of its power falls by `rate` a sample. */
export interface DecayLine {
  /** Nepers of power a sample; positive. */
  readonly rate: number;
  /** ln of the power at sample 0. */
  readonly atZero: number;
}

export interface Block {
  /** Middle of the block, samples. */
  readonly at: number;
  readonly power: number;
}

/** Mean powers of successive blocks of `length` samples (whole) between two indices. */
export function blockPowers(
  power: Float64Array,
  from: number,
  to: number,
  length: number,
): readonly Block[] {
  const blocks: Block[] = [];
  for (let start = Math.ceil(from); start + length <= to; start += length) {
    blocks.push({ at: start + (length - 1) / 2, power: meanPower(power, start, start + length) });
  }
  return blocks;
}

/** Mean of power[from … to); 0 for none. */
export function meanPower(power: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += power[n] ?? 0;
  return sum / Math.max(1, to - from);
}

/** Least squares through ln of the blocks' powers; null for fewer than 3 blocks or no fall. */
export function fitLine(blocks: readonly Block[]): DecayLine | null {
  const heard = blocks.filter(({ power }) => power > 0);
  if (heard.length < 3) return null;
  const middle = heard.reduce((sum, { at }) => sum + at, 0) / heard.length;
  const level = heard.reduce((sum, { power }) => sum + Math.log(power), 0) / heard.length;
  let xx = 0;
  let xy = 0;
  for (const { at, power } of heard) {
    xx += (at - middle) ** 2;
    xy += (at - middle) * (Math.log(power) - level);
  }
  const rate = -xy / xx;
  return rate > 0 && Number.isFinite(rate) ? { rate, atZero: level + rate * middle } : null;
}

/** Sample at which the line has fallen to a power. */
export function whereLineIs({ rate, atZero }: DecayLine, power: number): number {
  return (atZero - Math.log(power)) / rate;
}
