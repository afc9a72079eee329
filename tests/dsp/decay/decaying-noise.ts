import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { gaussian, seededRandom } from '../../../dsp/signal/random';

export const sampleRate = 48_000;
const beforeSeconds = 0.17;
const afterSeconds = 1.36;

/** One exponential: 60 dB are lost in `seconds`; its power at the arrival is `power`. */
export interface Fall {
  readonly seconds: number;
  readonly power: number;
}

export interface DecayingNoise {
  readonly falls: readonly Fall[];
  /** White noise under it, dB re a power of 1; left out: none. */
  readonly noiseDb?: number;
  readonly seed: number;
  readonly afterSeconds?: number;
  /** A click of so much energy at the arrival, in samples of power 1. */
  readonly direct?: number;
}

/** White noise that decays from its arrival at zero delay on, in white noise. */
export function decayingNoise(spec: DecayingNoise): ImpulseResponse {
  const zeroIndex = Math.round(beforeSeconds * sampleRate);
  const after = Math.round((spec.afterSeconds ?? afterSeconds) * sampleRate);
  const samples = steadyNoise(spec.noiseDb, spec.seed + 0.5, zeroIndex + after);
  const next = gaussian(seededRandom(spec.seed));
  for (let n = 0; n < after; n++) {
    const seconds = n / sampleRate;
    const power = spec.falls.reduce(
      (sum, fall) => sum + fall.power * 10 ** ((-6 * seconds) / fall.seconds),
      0,
    );
    samples[zeroIndex + n] = (samples[zeroIndex + n] ?? 0) + Math.sqrt(power) * next();
  }
  samples[zeroIndex] = (samples[zeroIndex] ?? 0) + Math.sqrt(spec.direct ?? 0);
  return { samples, sampleRate, zeroIndex };
}

/** The same noise by itself, another stretch of it. */
export function noiseAlone(noiseDb: number, seed: number): ImpulseResponse {
  const zeroIndex = Math.round(beforeSeconds * sampleRate);
  const length = zeroIndex + Math.round(afterSeconds * sampleRate);
  return { samples: steadyNoise(noiseDb, seed + 0.25, length), sampleRate, zeroIndex };
}

function steadyNoise(db: number | undefined, seed: number, length: number): Float64Array {
  const samples = new Float64Array(length);
  if (db === undefined) return samples;
  const next = gaussian(seededRandom(seed));
  return samples.map(() => 10 ** (db / 20) * next());
}
