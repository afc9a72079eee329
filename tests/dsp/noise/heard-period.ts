import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import { gaussian, seededRandom } from '../../../dsp/signal/random';

/** A response that dies away within a quarter of the period: direct sound and a diffuse tail. */
export function invented(size: number, seed = 3): Float64Array {
  const normal = gaussian(seededRandom(seed));
  const response = new Float64Array(size);
  response[40] = 1;
  for (let n = 41; n < size / 4; n++) {
    response[n] = 0.08 * normal() * Math.exp((-12 * n) / (size / 4));
  }
  return response;
}

export interface Hearing {
  readonly ppm?: number;
  /** Rms of white noise. */
  readonly noise?: number;
  /** Where in the period the capture starts, samples. */
  readonly start?: number;
  /** From a capture frame on, so many played samples are missing. */
  readonly jump?: { readonly at: number; readonly frames: number };
  readonly bang?: { readonly at: number; readonly length: number; readonly peak: number };
  readonly gain?: number;
  readonly seed?: number;
}

/** What a microphone on another clock hears of a period that plays end to end through a response. */
export function hearing(period: Float64Array, response: Float64Array) {
  const size = period.length;
  const x = realSpectrum(period, size);
  const h = realSpectrum(response, size);
  const fine = new Float64Array(16 * size + 2);
  for (let k = 0; k < size / 2; k++) {
    const [a, b] = [x[2 * k] ?? 0, x[2 * k + 1] ?? 0];
    const [c, d] = [h[2 * k] ?? 0, h[2 * k + 1] ?? 0];
    fine[2 * k] = 16 * (a * c - b * d);
    fine[2 * k + 1] = 16 * (a * d + b * c);
  }
  const many = realSignal(fine, 16 * size);
  /** Lagrange's cubic on sixteenfold oversampling: −110 dB and better. */
  const at = (samples: number): number => {
    const place = (((samples % size) + size) % size) * 16;
    const low = Math.floor(place);
    const f = place - low;
    const value = (n: number): number => many[(low + n + 16 * size) % (16 * size)] ?? 0;
    return (
      (value(-1) * -f * (f - 1) * (f - 2)) / 6 +
      (value(0) * (f + 1) * (f - 1) * (f - 2)) / 2 -
      (value(1) * (f + 1) * f * (f - 2)) / 2 +
      (value(2) * (f + 1) * f * (f - 1)) / 6
    );
  };
  return (frames: number, how: Hearing = {}): Float32Array => {
    const { ppm = 0, noise = 0, start = 1234.4, jump, bang, gain = 1, seed = 9 } = how;
    const normal = gaussian(seededRandom(seed));
    return Float32Array.from({ length: frames }, (_, n) => {
      const skip = jump && n >= jump.at ? jump.frames : 0;
      const knock = bang && n >= bang.at && n < bang.at + bang.length ? bang.peak * normal() : 0;
      return gain * at(n / (1 + ppm * 1e-6) + start + skip) + noise * normal() + knock;
    });
  };
}

/** Hands a capture on in blocks. */
export function inBlocks(
  capture: Float32Array,
  push: (block: Float32Array, from: number) => void,
  block = 2048,
): void {
  for (let from = 0; from < capture.length; from += block) {
    push(capture.subarray(from, from + block), from);
  }
}
