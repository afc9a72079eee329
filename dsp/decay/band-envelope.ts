import { complexSignal, nextPowerOfTwo, realSpectrum, type HalfSpectrum } from '../fft/fft';
import type { Complex } from '../filter/complex';
import type { ImpulseResponse } from '../response/impulse-response';

/** A response and its spectrum, from which bands are taken one after the other. */
export interface TransformedResponse {
  readonly ir: ImpulseResponse;
  readonly spectrum: HalfSpectrum;
  readonly size: number;
}

/** Power of a band along time, at a rate of its own. */
export interface Envelope {
  /** Mean square of the band round each moment: half the squared analytic signal. */
  readonly power: Float64Array;
  readonly sampleRate: number;
  /** Where zero delay stands, fractional. */
  readonly zeroIndex: number;
}

/** The response's spectrum with `paddingSeconds` of silence, room for what filters ring. */
export function transformResponse(
  ir: ImpulseResponse,
  paddingSeconds: number,
): TransformedResponse {
  const size = nextPowerOfTwo(ir.samples.length + Math.ceil(paddingSeconds * ir.sampleRate));
  return { ir, spectrum: realSpectrum(ir.samples, size), size };
}

/**
 * Power along time of what a filter lets through between lowHz and highHz, as long as the response.
 * `gain` is the filter's response at a frequency. The band is moved to 0 Hz, which leaves its
 * magnitude as it is, and told at a rate of highHz − lowHz or more and at least `leastRate`.
 * Throws RangeError unless 0 ≤ lowHz < highHz.
 */
export function bandEnvelope(
  { ir, spectrum, size }: TransformedResponse,
  [lowHz, highHz]: readonly [number, number],
  gain: (hz: number) => Complex,
  leastRate = 0,
): Envelope {
  if (!(lowHz >= 0 && lowHz < highHz)) {
    throw new RangeError(`band must be 0 ≤ lowHz < highHz, got ${lowHz} … ${highHz}`);
  }
  const hzPerBin = ir.sampleRate / size;
  const first = Math.max(1, Math.ceil(lowHz / hzPerBin));
  const last = Math.min(size / 2 - 1, Math.floor(highHz / hzPerBin));
  const count = Math.max(last - first + 1, leastRate / hzPerBin);
  const small = nextPowerOfTwo(Math.ceil(count));
  const moved = new Float64Array(2 * small);
  for (let bin = first; bin <= last; bin++) {
    const { re, im } = gain(bin * hzPerBin);
    const x = spectrum[2 * bin] ?? 0;
    const y = spectrum[2 * bin + 1] ?? 0;
    moved[2 * (bin - first)] = x * re - y * im;
    moved[2 * (bin - first) + 1] = x * im + y * re;
  }
  const analytic = complexSignal(moved);
  const sampleRate = small * hzPerBin;
  const length = Math.floor((ir.samples.length / ir.sampleRate) * sampleRate);
  const power = new Float64Array(length);
  // Negative frequencies are left out, hence (2·small/size)² of |z|²; half of that is the mean square.
  const scale = 2 * (small / size) ** 2;
  for (let n = 0; n < length; n++) {
    power[n] = scale * ((analytic[2 * n] ?? 0) ** 2 + (analytic[2 * n + 1] ?? 0) ** 2);
  }
  return { power, sampleRate, zeroIndex: (ir.zeroIndex * sampleRate) / ir.sampleRate };
}

/**
 * Mean square of what a filter lets through between lowHz and highHz, over the whole response;
 * for noise, whose power does not change along time.
 */
export function meanBandPower(
  { ir, spectrum, size }: TransformedResponse,
  [lowHz, highHz]: readonly [number, number],
  gain: (hz: number) => Complex,
): number {
  const hzPerBin = ir.sampleRate / size;
  const last = Math.min(size / 2 - 1, Math.floor(highHz / hzPerBin));
  let sum = 0;
  for (let bin = Math.max(1, Math.ceil(lowHz / hzPerBin)); bin <= last; bin++) {
    const { re, im } = gain(bin * hzPerBin);
    const power = (spectrum[2 * bin] ?? 0) ** 2 + (spectrum[2 * bin + 1] ?? 0) ** 2;
    sum += (re * re + im * im) * power;
  }
  return (2 * sum) / (size * ir.samples.length);
}
