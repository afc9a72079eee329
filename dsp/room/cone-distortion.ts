/**
 * How a cone distorts: its excursion follows the drive below a resonance and falls by 12 dB per
 * octave above it; its suspension yields unevenly and ever less. Invented, plausible.
 */
export interface ConeDistortion {
  /** Resonance of the excursion, Q 0.71. */
  readonly hz: number;
  /** Second and third harmonic re the drive of a full-scale sine far below the resonance. */
  readonly second: number;
  readonly third: number;
}

/**
 * The drive of a speaker (full scale 1) with what its cone distorts: x + 2·second·e² − 4·third·e³, e
 * the low-passed drive. A sine of peak A far below the resonance so has harmonics second·A² and
 * third·A³ and a fundamental of A − 3·third·A³; far above it has none, so nothing folds back.
 * Throws RangeError when cubes would turn the drive back: 12·third above 1.
 */
export function distortDrive(
  drive: ArrayLike<number>,
  sampleRate: number,
  { hz, second, third }: ConeDistortion,
): Float64Array {
  if (!(third >= 0 && 12 * third <= 1)) {
    throw new RangeError(`third must lie in 0 … 1/12, got ${third}`);
  }
  // Bilinear low-pass of second order: W3C Audio EQ Cookbook.
  const angle = (2 * Math.PI * hz) / sampleRate;
  const alpha = Math.sin(angle) / Math.SQRT2;
  const a0 = 1 + alpha;
  const b = (1 - Math.cos(angle)) / 2 / a0;
  const a1 = (-2 * Math.cos(angle)) / a0;
  const a2 = (1 - alpha) / a0;
  const out = new Float64Array(drive.length);
  let [x1, x2, e1, e2] = [0, 0, 0, 0];
  for (let n = 0; n < out.length; n++) {
    const x = drive[n] ?? 0;
    const e = b * (x + 2 * x1 + x2) - a1 * e1 - a2 * e2;
    out[n] = x + e * e * (2 * second - 4 * third * e);
    [x2, x1] = [x1, x];
    [e2, e1] = [e1, e];
  }
  return out;
}
