import { fadeEnds } from './fade';

/** Timing mark: a short linear chirp. */
export interface MarkSpec {
  readonly startHz: number;
  readonly endHz: number;
  readonly lengthSamples: number;
  readonly fadeSamples: number;
  readonly sampleRate: number;
}

/** The mark of every take: 2 to 12 kHz in 30 ms, faded over 3 ms. Throws RangeError below 24 kHz. */
export function standardMark(sampleRate: number): MarkSpec {
  const spec = {
    startHz: 2000,
    endHz: 12_000,
    lengthSamples: Math.round(0.03 * sampleRate),
    fadeSamples: Math.round(0.003 * sampleRate),
    sampleRate,
  };
  checkMark(spec);
  return spec;
}

/**
 * Samples of the mark, sin 2π(f1 t + (f2 − f1) t²/2T), peak 1, faded at both ends.
 * Throws RangeError unless both frequencies lie above 0 and up to half the rate.
 */
export function markSignal(spec: MarkSpec): Float64Array {
  checkMark(spec);
  const { startHz, endHz, lengthSamples, sampleRate } = spec;
  const risePerSecond = ((endHz - startHz) * sampleRate) / lengthSamples;
  const signal = new Float64Array(lengthSamples);
  for (let n = 0; n < lengthSamples; n++) {
    const t = n / sampleRate;
    signal[n] = Math.sin(2 * Math.PI * (startHz + (risePerSecond * t) / 2) * t);
  }
  fadeEnds(signal, spec.fadeSamples, spec.fadeSamples);
  return signal;
}

function checkMark(spec: MarkSpec): void {
  const { startHz, endHz, lengthSamples, sampleRate } = spec;
  for (const hz of [startHz, endHz]) {
    if (!(hz > 0 && hz <= sampleRate / 2 && sampleRate < Infinity)) {
      throw new RangeError(`a mark's frequency must lie in 0 … ${sampleRate / 2} Hz, got ${hz}`);
    }
  }
  if (!Number.isInteger(lengthSamples) || lengthSamples < 1) {
    throw new RangeError(`lengthSamples must be whole and positive, got ${lengthSamples}`);
  }
}
