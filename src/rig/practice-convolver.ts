import { multiplySpectra } from '../../dsp/fft/convolve';
import { nextPowerOfTwo, realSignal, realSpectrum } from '../../dsp/fft/fft';

/** Adds signals, convolved with one impulse response, to a mix; block by block. */
export interface Convolver {
  /** Adds `samples` at `start` of the mix; what falls outside the mix is dropped. */
  add(mix: Float64Array, start: number, samples: Float32Array): void;
}

/** A convolver of one impulse response. A signal added again is not convolved again. */
export function convolver(impulseResponse: Float64Array): Convolver {
  const size = 2 * nextPowerOfTwo(impulseResponse.length);
  const block = size - impulseResponse.length + 1;
  const response = realSpectrum(impulseResponse, size);
  const done = new Map<Float32Array, { readonly at: number; readonly wet: Float64Array }[]>();
  const convolved = (samples: Float32Array): { at: number; wet: Float64Array }[] => {
    const pieces = [];
    for (let at = 0; at < samples.length; at += block) {
      const spectrum = realSpectrum(samples.subarray(at, at + block), size);
      multiplySpectra(spectrum, response);
      pieces.push({ at, wet: realSignal(spectrum, size) });
    }
    return pieces;
  };
  return {
    add(mix, start, samples) {
      const pieces = done.get(samples) ?? convolved(samples);
      done.set(samples, pieces);
      for (const { at, wet } of pieces) {
        const end = Math.min(wet.length, mix.length - start - at);
        for (let n = 0; n < end; n++) {
          mix[start + at + n] = (mix[start + at + n] ?? 0) + (wet[n] ?? 0);
        }
      }
    },
  };
}
