/**
 * The nearest whole multiple of `step` that lies within `range`; the unit is that of all three.
 * The range must hold one.
 */
export function quantise(value: number, step: number, range: readonly [number, number]): number {
  const low = Math.ceil(range[0] / step - 1e-9);
  const high = Math.floor(range[1] / step + 1e-9);
  const count = Math.min(Math.max(Math.round(value / step), low), high);
  // Nine decimals take the last bits of 0.1 + 0.2 away and leave every real step whole.
  return Number((count * step).toFixed(9)) + 0;
}

/** Whether a value lies within a range, ends and rounding included. */
export function isWithin(value: number, range: readonly [number, number]): boolean {
  return value >= range[0] - 1e-9 && value <= range[1] + 1e-9;
}
