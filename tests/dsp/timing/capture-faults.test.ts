import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { findClipping } from '../../../dsp/timing/clipping';
import { findDropouts } from '../../../dsp/timing/dropouts';
import { measureNoise } from '../../../dsp/timing/noise';
import { scanCapture } from '../../../dsp/timing/scan-capture';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';

const sweep = sweepSignal(synchronisedSweep(20, 20_000, 2 ** 16, 48_000));
const normal = gaussian(seededRandom(11));
const noise = Float64Array.from(sweep, () => normal());

function sound(level: number, noiseLevel: number): Float64Array {
  return sweep.map((value, n) => level * value + noiseLevel * (noise[n] ?? 0));
}

function quantise(samples: Float64Array, bits: number): Float64Array {
  const scale = 2 ** (bits - 1);
  return samples.map(
    (value) => Math.max(-scale, Math.min(scale - 1, Math.round(value * scale))) / scale,
  );
}

function limit(samples: Float64Array, ceiling: number): Float64Array {
  return samples.map((value) => Math.max(-ceiling, Math.min(ceiling, value)));
}

const whole = (samples: Float64Array) => findClipping(samples, 0, samples.length);

describe('findClipping', () => {
  it('finds full scale reached in 16, 24 bits and floats', () => {
    for (const samples of [
      quantise(sound(1.1, 1e-3), 16),
      quantise(sound(1.1, 1e-5), 24),
      limit(sound(1.1, 1e-4), 1),
    ]) {
      const clipping = whole(samples);
      expectClose(clipping?.ceiling, 1, 1e-4);
      expect(clipping?.plateaus).toBeGreaterThan(100);
    }
  });

  it('finds a constant ceiling below full scale', () => {
    const clipping = whole(quantise(limit(sound(0.5, 1e-3), 0.4), 16));
    expectClose(clipping?.ceiling, 0.4, 1e-4);
  });

  it('finds a ceiling reached on one side only', () => {
    const samples = sound(0.5, 1e-3).map((value) => Math.max(-0.3, value));
    expectClose(whole(samples)?.ceiling, 0.3, 1e-9);
  });

  it('finds tops too short for a plateau, as of a clipped treble', () => {
    const samples = Float64Array.from({ length: 4000 }, (_, n) => 0.9 * Math.sin(1.9 * n));
    expect(whole(quantise(limit(samples, 0.85), 16))).not.toBeNull();
  });

  it('says where it begins and only looks where told', () => {
    const samples = sound(0.1, 1e-3);
    for (let n = 30_000; n < 40_000; n++) {
      samples[n] = Math.max(-0.4, Math.min(0.4, 10 * (samples[n] ?? 0)));
    }
    const first = whole(samples)?.firstSample ?? 0;
    expect(first).toBeGreaterThanOrEqual(30_000);
    expect(first).toBeLessThan(30_200);
    expect(findClipping(samples, 0, 29_000)).toBeNull();
    expect(findClipping(samples, 41_000, 60_000)).toBeNull();
  });

  it('lets loud and quiet captures of all depths pass', () => {
    for (const level of [0.99, 0.5, 0.1, 0.01, 0.001]) {
      for (const noiseLevel of [0, 1e-5, 1e-4, 1e-3]) {
        const samples = sound(level, noiseLevel).map((value) => 0.995 * value);
        expect(whole(samples)).toBeNull();
        expect(whole(quantise(samples, 24))).toBeNull();
        expect(whole(quantise(samples, 16))).toBeNull();
      }
    }
  });

  it('lets noise of a few converter steps, a hum and silence pass', () => {
    for (const level of [0.2, 1, 3, 10]) {
      const hiss = noise.map((value) => (level * value) / 32_768);
      expect(whole(quantise(hiss, 16))).toBeNull();
    }
    const hum = Float64Array.from({ length: 48_000 }, (_, n) => 0.3 * Math.sin(n * 0.00654));
    expect(whole(quantise(hum, 16))).toBeNull();
    expect(whole(new Float64Array(1000))).toBeNull();
    expect(whole(new Float64Array(1000).fill(0.25))).toBeNull();
  });

  it('refuses bounds outside the samples', () => {
    expect(() => findClipping(new Float64Array(10), 0, 11)).toThrow(/0, 11/);
    expect(() => findClipping(new Float64Array(10), 5, 4)).toThrow(RangeError);
    expect(() => findClipping(new Float64Array(10), 0.5, 4)).toThrow(RangeError);
  });
});

describe('measureNoise', () => {
  it('gives the level of noise, whatever the offset under it', () => {
    const samples = noise.map((value) => 0.001 * value + 0.02);
    expectClose(measureNoise(samples, 0, samples.length), -60, 0.1, 'one noise of 65536 samples');
  });

  it('gives −3.01 dB for a full sine and −200 for silence', () => {
    const sine = Float64Array.from({ length: 4800 }, (_, n) => Math.sin((2 * Math.PI * n) / 48));
    expectClose(measureNoise(sine, 0, 4800), -3.0103, 1e-3);
    expect(measureNoise(new Float64Array(100), 0, 100)).toBe(-200);
    expect(measureNoise(sine, 7, 7)).toBe(-200);
  });
});

describe('scanCapture', () => {
  it('gives the largest magnitude and the smallest that is not 0', () => {
    const scan = { notNumber: -1, peak: 0.75, step: 0.125 };
    expect(scanCapture(Float32Array.of(0.5, -0.75, 0, -0.125))).toEqual(scan);
    expect(scanCapture(new Float32Array(3))).toEqual({ notNumber: -1, peak: 0, step: 1 });
  });

  it('finds the first sample that is no number', () => {
    expect(scanCapture(Float64Array.of(0, 1, NaN, Infinity)).notNumber).toBe(2);
    expect(scanCapture(Float64Array.of(0, -Infinity)).notNumber).toBe(1);
    expect(scanCapture(Float64Array.of(0, 1)).notNumber).toBe(-1);
  });
});

describe('findDropouts', () => {
  it('finds runs of 64 zeros and more wherever they stand, and no shorter ones', () => {
    for (let length = 60; length < 200; length += 1) {
      for (let start = 300; start < 430; start += 7) {
        const samples = new Float32Array(1000).fill(0.25);
        samples.fill(0, start, start + length);
        const found = length < 64 ? [] : [{ from: start, length }];
        expect(findDropouts(samples, 290, 1000)).toEqual(found);
      }
    }
  });

  const samples = quantise(sound(0.1, 1e-3), 16);

  it('finds zeroed buffers', () => {
    const broken = samples.slice();
    broken.fill(0, 10_000, 10_128);
    broken.fill(0, 30_000, 32_048);
    const found = findDropouts(broken, 0, broken.length);
    expectClose(
      found.map(({ from, length }) => [from, from + length]),
      [
        [10_000, 10_128],
        [30_000, 32_048],
      ],
      2,
      'a neighbour may be zero by itself',
    );
  });

  it('lets a sound capture, its silent ends and a barely sounding one pass', () => {
    expect(findDropouts(samples, 0, samples.length)).toEqual([]);
    const padded = new Float64Array(samples.length + 2000);
    padded.set(samples, 1000);
    expect(findDropouts(padded, 0, padded.length)).toEqual([]);
    const quiet = quantise(
      noise.map((value) => (0.12 * value) / 32_768),
      16,
    );
    expect(findDropouts(quiet, 0, quiet.length)).toEqual([]);
  });
});
