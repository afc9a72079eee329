// Source: SciPy; decay-times.py (beside) made decay-times.vectors.json. The slopes bend, so that a
// range that starts or ends elsewhere, another band, or noise left in gives other times.
import { describe, it } from 'vitest';
import { readDecayBands } from '../../../dsp/decay/read-decay-bands';
import { expectClose } from '../../close';
import vectors from './decay-times.vectors.json';

const { sampleRate, lead, length, falls, bands } = vectors;

/** Numbers from −1 to 1, as decay-times.py makes them; the product stays below 2^53. */
function uniform(seed: number, count: number): Float64Array {
  let state = seed;
  return new Float64Array(count).map(() => {
    state = (1_664_525 * state + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 31 - 1;
  });
}

/** The sound itself: silence, then noise that falls by two slopes. */
function fall(seed: number): Float64Array {
  const samples = new Float64Array(length);
  for (const [n, value] of uniform(seed, length - lead).entries()) {
    const power = falls.reduce(
      (sum, [own = 0, seconds = 1]) => sum + own * 10 ** ((-6 * n) / sampleRate / seconds),
      0,
    );
    samples[lead + n] = Math.sqrt(power) * value;
  }
  return samples;
}

/** Times of all octaves read, one row a band, beside SciPy's. */
function readTimes(samples: Float64Array, noise: Float64Array | null) {
  const response = (one: Float64Array) => ({ samples: one, sampleRate, zeroIndex: lead });
  const { bands: read } = readDecayBands(response(samples), {
    noise: noise && response(noise),
    arrivalSeconds: 0,
    bandsHz: [120, 8000],
  });
  const midpoints = read.map(({ midHz }) => midHz);
  expectClose(
    midpoints,
    bands.map(({ midHz }) => midHz),
    1e-6,
  );
  return (key: 'edt' | 't20' | 't30'): number[] =>
    read.map((band, n) => (band[key].seconds ?? Number.NaN) / (bands[n]?.[key] ?? 1) - 1);
}

describe('decay times per octave are those of SciPy', () => {
  const clean = fall(vectors.seed);

  it.each([
    ['edt', 0.03],
    ['t20', 0.0075],
    ['t30', 0.015],
  ] as const)('%s without noise, in steps of up to 0.2 s/400', (key, tolerance) => {
    for (const off of readTimes(clean, null)(key)) expectClose(off, 0, tolerance);
  });

  it.each([
    ['t20', -46, 0.01],
    ['t20', -50, 0.0075],
    ['t30', -50, 0.015],
  ] as const)('%s in noise at %d dB, from 1 kHz up', (key, noiseDb, tolerance) => {
    const noise = (seed: number): Float64Array =>
      uniform(seed, length).map((value) => value * 10 ** (noiseDb / 20));
    const hiss = noise(77);
    const heard = clean.map((value, n) => value + (hiss[n] ?? 0));
    // Below, a band holds so little noise that chance moves the times by more than a mistake does.
    for (const off of readTimes(heard, noise(78))(key).slice(3)) expectClose(off, 0, tolerance);
  });
});
