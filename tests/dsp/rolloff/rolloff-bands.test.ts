import { describe, expect, it } from 'vitest';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const rate = 4000;

function impulse(length = 8000, at = 1000, size = 1): ImpulseResponse {
  const samples = new Float64Array(length);
  samples[at] = size;
  return { samples, sampleRate: rate, zeroIndex: at };
}

/** exp(−2π fc t): a one-pole low-pass, |H|² ∝ 1/(fc² + f²) well below half the rate. */
function onePole(cornerHz: number, sampleRate: number): ImpulseResponse {
  const at = Math.round(0.3 * sampleRate);
  const samples = Float64Array.from({ length: 2 * sampleRate }, (_, n) =>
    n < at ? 0 : Math.exp((-2 * Math.PI * cornerHz * (n - at)) / sampleRate),
  );
  return { samples, sampleRate, zeroIndex: at };
}

function noise(seed: number, sigma: number, length = 8000): Float64Array {
  const normal = gaussian(seededRandom(seed));
  return Float64Array.from({ length }, () => sigma * normal());
}

describe('rolloffBands', () => {
  it('reads an impulse as flat, in 61 bands of 1/12 octave from 15 Hz', () => {
    const { hz, power, marginDb } = rolloffBands(impulse(), null);
    expect(hz).toHaveLength(61);
    expectClose([hz[0], hz[12], hz[60]], [15, 30, 480], 1e-9);
    expectClose(power, new Float64Array(61).fill(1), 1e-9);
    expect([...marginDb].every((margin) => margin === Infinity)).toBe(true);
  });

  it('does not depend on the level or on where the response stands', () => {
    const bands = rolloffBands(onePole(60, 8000), null);
    const { samples } = onePole(60, 8000);
    const later = new Float64Array(samples.length + 3000);
    later.set(
      samples.map((value) => -7 * value),
      3000,
    );
    const moved = rolloffBands({ samples: later, sampleRate: 8000, zeroIndex: 5400 }, null);
    expectClose(moved.power, bands.power, 1e-9);
  });

  it.each([8000, 44100, 96000])('finds the slope of a one-pole low-pass at %d Hz', (sampleRate) => {
    const { hz, power } = rolloffBands(onePole(100, sampleRate), null);
    const level = (k: number): number => 10 * Math.log10(power[k] ?? 0);
    const law = (k: number): number => -10 * Math.log10(100 ** 2 + (hz[k] ?? 0) ** 2);
    for (const k of [0, 12, 24, 36, 42]) {
      expectClose(level(k) - level(30), law(k) - law(30), 0.15, 'band means, aliasing at 8 kHz');
    }
  });

  it('takes off the noise that silence shows', () => {
    const clean = impulse();
    const rms = 0.01;
    const withNoise = clean.samples.map((value, n) => value + (noise(1, rms)[n] ?? 0));
    const silence = { ...clean, samples: noise(2, rms) };
    const { power, noisePower } = rolloffBands({ ...clean, samples: withNoise }, silence);
    const top = power.subarray(43);
    const mean = top.reduce((sum, p) => sum + p, 0) / top.length;
    // 1.25 s at 4 kHz, a tapered fifth of it counting 3/8: σ² · (4400 + 375) beside the impulse's 1.
    const share = noisePower.subarray(30).reduce((sum, p) => sum + p, 0) / 31;
    expectClose(share, rms ** 2 * 4775, 0.08, 'one draw of noise');
    expectClose(mean, 1, 0.05, 'level reference');
  });

  it('scales a shorter silence to the length of the response', () => {
    const clean = impulse();
    const long = rolloffBands(clean, { ...clean, samples: noise(5, 0.003) });
    const short = rolloffBands(clean, { ...clean, samples: noise(6, 0.003, 2500) });
    const mean = (bands: Float64Array): number =>
      bands.subarray(30).reduce((s, p) => s + p, 0) / 31;
    expectClose(mean(short.noisePower) / mean(long.noisePower), 1, 0.3, 'two draws of noise');
  });

  it('says −Infinity, not NaN, where the noise is above what was measured', () => {
    const quiet = impulse(8000, 1000, 0.01);
    const { marginDb, power } = rolloffBands(quiet, { ...quiet, samples: noise(3, 1) });
    expect([...marginDb].every((margin) => margin === -Infinity)).toBe(true);
    expect([...power].every(Number.isFinite)).toBe(true);
  });

  it('refuses silence, NaN and two rates', () => {
    expect(() => rolloffBands(impulse(8000, 1000, 0), null)).toThrow('got silence');
    expect(() => rolloffBands(impulse(8000, 1000, Number.NaN), null)).toThrow('got NaN');
    expect(() => rolloffBands(impulse(0), null)).toThrow(RangeError);
    expect(() => rolloffBands(impulse(), { ...impulse(), sampleRate: 8000 })).toThrow(RangeError);
    expect(() => rolloffBands({ ...impulse(), sampleRate: 1000 }, null)).toThrow(RangeError);
  });
});

describe('rolloffBands of the early part', () => {
  it.each([4000, 48000])('sees a one-pole low-pass decay faster, at %d Hz', (sampleRate) => {
    const { hz, early } = rolloffBands(onePole(60, sampleRate), null);
    expect(early.map(({ seconds }) => seconds)).toEqual([0.02, 0.08]);
    for (const { seconds, power } of early) {
      // e^(−2πft)·e^(−t/τ) is a one-pole low-pass of f + 1/2πτ.
      const corner = 60 + 1 / (2 * Math.PI * seconds);
      const expected = hz.map((f) => 1 / (corner * corner + f * f));
      const db = power.map((p, k) => 10 * Math.log10(p / (expected[k] ?? 1)));
      expectClose(db.subarray(0, 42), new Float64Array(42).fill(db[0] ?? 0), 0.35);
    }
  });

  it('lets through the noise that falls into its window', () => {
    const sigma = 1e-3;
    const clean = onePole(60, 4000);
    const hiss = noise(3, sigma);
    const samples = clean.samples.map((value, n) => value + (hiss[n] ?? 0));
    const { noisePower, early } = rolloffBands(
      { ...clean, samples },
      { ...clean, samples: noise(4, sigma) },
    );
    for (const { seconds, noisePower: own } of early) {
      // 20 ms of lead and the energy τ/2 of the window, of 1.25 s less what the fade takes.
      const share = (0.02 + seconds / 2) / (1.35 - 0.25 * 0.625);
      expectClose((own[30] ?? 0) / (noisePower[30] ?? 1), share, 0.05 * share);
    }
  });
});
