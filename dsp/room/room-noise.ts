import { seededRandom } from '../signal/random';

/** Corners of the filters whose sum falls 3 dB per octave, Hz; two octaves apart. */
const corners = [4, 16, 64, 256, 1024, 4096, 16384];

/** Rms of a room's noise over the whole band. */
export interface NoiseRms {
  readonly pink: number;
  readonly hiss: number;
}

/**
 * What a microphone hears of a quiet room: pink noise from about 4 Hz up plus white hiss, of the
 * given rms each over the whole band. The same seed gives the same noise.
 */
export function roomNoise(
  length: number,
  sampleRate: number,
  seed: number,
  rms: NoiseRms,
): Float64Array {
  const next = noiseSource(sampleRate, seed, rms);
  const noise = new Float64Array(length);
  for (let n = 0; n < length; n++) noise[n] = next();
  return noise;
}

/** The same noise sample by sample, without end. */
export function noiseSource(sampleRate: number, seed: number, rms: NoiseRms): () => number {
  const random = seededRandom(seed);
  // Sum of two uniform numbers, variance 1: enough for a noise that is filtered and added up.
  const noise = (): number => (random() + random() - 1) * Math.sqrt(6);
  const keep = corners.map((hz) => Math.exp((-2 * Math.PI * hz) / sampleRate));
  const feed = keep.map((value, i) => (1 - value) / Math.sqrt(corners[i] ?? 1));
  const pink = rms.pink / Math.sqrt(sumPower(keep, feed));
  const state = new Float64Array(corners.length);
  const nextPink = (): number => {
    const white = noise();
    let sum = 0;
    for (let i = 0; i < state.length; i++) {
      const value = (keep[i] ?? 0) * (state[i] ?? 0) + (feed[i] ?? 0) * white;
      state[i] = value;
      sum += value;
    }
    return sum;
  };
  // The slowest filter settles before the first sample is kept.
  for (let n = 0; n < Math.round(sampleRate / 4); n++) nextPink();
  return () => pink * nextPink() + rms.hiss * noise();
}

/** Power of the sum of one-pole filters fed by one white noise: Σ_ij b_i b_j/(1 − a_i a_j). */
function sumPower(keep: readonly number[], feed: readonly number[]): number {
  let power = 0;
  for (const [i, a] of keep.entries()) {
    for (const [j, b] of keep.entries()) {
      power += ((feed[i] ?? 0) * (feed[j] ?? 0)) / (1 - a * b);
    }
  }
  return power;
}
