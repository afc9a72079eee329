import { divide, multiply, one, type Complex } from './complex';

/** y[n] = b0 x[n] + b1 x[n−1] + b2 x[n−2] − a1 y[n−1] − a2 y[n−2]. */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** Complex response of sections in series at `hz`, from 0 to half the sample rate. */
export function sectionsResponse(
  sections: readonly Biquad[],
  hz: number,
  sampleRate: number,
): Complex {
  if (!(hz >= 0 && hz <= sampleRate / 2)) {
    throw new RangeError(`hz must lie between 0 and ${sampleRate / 2}, got ${hz}`);
  }
  const angle = (-2 * Math.PI * hz) / sampleRate;
  const z1 = { re: Math.cos(angle), im: Math.sin(angle) };
  const z2 = { re: Math.cos(2 * angle), im: Math.sin(2 * angle) };
  return sections.reduce((h, { b0, b1, b2, a1, a2 }) => {
    const top = { re: b0 + b1 * z1.re + b2 * z2.re, im: b1 * z1.im + b2 * z2.im };
    const bottom = { re: 1 + a1 * z1.re + a2 * z2.re, im: a1 * z1.im + a2 * z2.im };
    return multiply(h, divide(top, bottom));
  }, one);
}

/** The samples after passing the sections in series, from rest; same length (transposed form II). */
export function filterSamples(
  samples: ArrayLike<number>,
  sections: readonly Biquad[],
): Float64Array {
  const out = Float64Array.from(samples);
  for (const { b0, b1, b2, a1, a2 } of sections) {
    let s1 = 0;
    let s2 = 0;
    for (let n = 0; n < out.length; n++) {
      const x = out[n] ?? 0;
      const y = b0 * x + s1;
      s1 = b1 * x - a1 * y + s2;
      s2 = b2 * x - a2 * y;
      out[n] = y;
    }
  }
  return out;
}
