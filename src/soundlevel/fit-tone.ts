import { nextPowerOfTwo, realSpectrum } from '../../dsp/fft/fft';

/** A steady tone found in a stretch of sound. */
export interface Tone {
  readonly hz: number;
  /** Mean square of the tone. */
  readonly power: number;
  /** Mean square of all the rest but the constant part. */
  readonly rest: number;
}

/**
 * The strongest tone above 20 Hz: place from the peak of a windowed spectrum, refined by a parabola
 * through its log, power by a least-squares sine. Null when the stretch is silent or shorter than
 * 256 samples. Common practice.
 */
export function fitTone(samples: Float64Array, sampleRate: number): Tone | null {
  const { length } = samples;
  if (length < 256) return null;
  const mean = samples.reduce((sum, x) => sum + x, 0) / length;
  const size = nextPowerOfTwo(length);
  const windowed = samples.map(
    (x, n) => (x - mean) * Math.sin((Math.PI * (n + 0.5)) / length) ** 2,
  );
  const spectrum = realSpectrum(windowed, size);
  const power = (k: number): number =>
    (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
  let top = 0;
  for (let k = Math.ceil((20 * size) / sampleRate); k < size / 2; k++) {
    if (top === 0 || power(k) > power(top)) top = k;
  }
  if (!(power(top) > 1e-20)) return null;
  const [a, b, c] = [top - 1, top, top + 1].map((k) => Math.log(power(k) + 1e-300));
  const bend = (a ?? 0) - 2 * (b ?? 0) + (c ?? 0);
  const shift = bend < 0 ? (0.5 * ((a ?? 0) - (c ?? 0))) / bend : 0;
  const hz = ((top + shift) * sampleRate) / size;
  return { hz, ...fitSine(samples, hz, sampleRate) };
}

/** Least-squares sine of a known frequency, a·cos + b·sin, and what it leaves; mean squares. */
export function fitSine(
  samples: Float64Array,
  hz: number,
  sampleRate: number,
): { readonly power: number; readonly rest: number } {
  const mean = samples.reduce((sum, x) => sum + x, 0) / samples.length;
  const angle = (2 * Math.PI * hz) / sampleRate;
  let [cc, cs, ss, xc, xs, xx] = [0, 0, 0, 0, 0, 0];
  for (let n = 0; n < samples.length; n++) {
    const x = (samples[n] ?? 0) - mean;
    const cos = Math.cos(angle * n);
    const sin = Math.sin(angle * n);
    cc += cos * cos;
    cs += cos * sin;
    ss += sin * sin;
    xc += x * cos;
    xs += x * sin;
    xx += x * x;
  }
  const determinant = cc * ss - cs * cs;
  const a = (xc * ss - xs * cs) / determinant;
  const b = (xs * cc - xc * cs) / determinant;
  const explained = a * xc + b * xs;
  return {
    power: (a * a + b * b) / 2,
    rest: Math.max(xx - explained, 0) / samples.length,
  };
}
