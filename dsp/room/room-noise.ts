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
  const noise = new Float64Array(length);
  noiseFiller(sampleRate, seed, rms)(noise);
  return noise;
}

/** So many samples are made at a time for who takes one by one. */
const ahead = 256;

/** The same noise sample by sample, without end. */
export function noiseSource(sampleRate: number, seed: number, rms: NoiseRms): () => number {
  const fill = noiseFiller(sampleRate, seed, rms);
  const made = new Float64Array(ahead);
  let next = ahead;
  return () => {
    if (next === ahead) {
      fill(made);
      next = 0;
    }
    return made[next++] ?? 0;
  };
}

/** Fills one array after another with what follows; filters are written out, which is much faster. */
function noiseFiller(
  sampleRate: number,
  seed: number,
  rms: NoiseRms,
): (into: Float64Array) => void {
  const random = seededRandom(seed);
  const keep = corners.map((hz) => Math.exp((-2 * Math.PI * hz) / sampleRate));
  const feed = keep.map((value, i) => (1 - value) / Math.sqrt(corners[i] ?? 1));
  const pink = rms.pink / Math.sqrt(sumPower(keep, feed));
  const [ka = 0, kb = 0, kc = 0, kd = 0, ke = 0, kf = 0, kg = 0] = keep;
  const [fa = 0, fb = 0, fc = 0, fd = 0, fe = 0, ff = 0, fg = 0] = feed;
  // Sum of two uniform numbers, variance 1: enough for a noise that is filtered and added up.
  const scale = Math.sqrt(6);
  const state = new Float64Array(corners.length);
  const run = (into: Float64Array, settled: boolean): void => {
    let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = state;
    for (let n = 0; n < into.length; n++) {
      const white = (random() + random() - 1) * scale;
      a = ka * a + fa * white;
      b = kb * b + fb * white;
      c = kc * c + fc * white;
      d = kd * d + fd * white;
      e = ke * e + fe * white;
      f = kf * f + ff * white;
      g = kg * g + fg * white;
      into[n] = pink * (a + b + c + d + e + f + g);
      if (settled) into[n] = (into[n] ?? 0) + rms.hiss * ((random() + random() - 1) * scale);
    }
    state.set([a, b, c, d, e, f, g]);
  };
  // The slowest filter settles before the first sample is kept.
  run(new Float64Array(Math.round(sampleRate / 4)), false);
  return (into) => run(into, true);
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
