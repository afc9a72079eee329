import { describe, expect, it } from 'vitest';
import { createRunningSpectrum } from '../../../dsp/noise/running-spectrum';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const normal = gaussian(seededRandom(1));
const noise = Float32Array.from({ length: 400_000 }, () => 0.1 * normal());
const sumOf = (power: Float64Array): number => power.reduce((sum, one) => sum + one, 0);

describe('createRunningSpectrum', () => {
  it('has bins that add up to the mean square of noise, evenly', () => {
    const spectrum = createRunningSpectrum(4096, 48_000);
    spectrum.push(noise);
    const power = spectrum.read()?.power ?? new Float64Array(0);
    expectClose(10 * Math.log10(sumOf(power) / 0.01), 0, 0.05);
    const half = sumOf(power.subarray(0, 1024)) / sumOf(power);
    expectClose(half, 0.5, 0.01);
  });

  it('reads a sine as half its amplitude squared', () => {
    const spectrum = createRunningSpectrum(1024, 48_000);
    const sine = Float32Array.from({ length: 8192 }, (_, n) => 0.5 * Math.sin(0.3 * n));
    spectrum.push(sine);
    expectClose(sumOf(spectrum.read()?.power ?? new Float64Array(0)), 0.125, 1e-4);
  });

  it('reads the same in whatever blocks sound comes', () => {
    const one = createRunningSpectrum(1024, 48_000);
    const other = createRunningSpectrum(1024, 48_000);
    one.push(noise.subarray(0, 10_000));
    for (let at = 0; at < 10_000; at += 77) {
      other.push(noise.subarray(at, Math.min(at + 77, 10_000)));
    }
    expect(other.read()).toEqual(one.read());
    expect(one.count).toBe(18);
  });

  it('forgets what is older than its limit', () => {
    const spectrum = createRunningSpectrum(1024, 48_000, 5);
    spectrum.push(noise.subarray(0, 50_000));
    spectrum.push(new Float32Array(60_000));
    expect(sumOf(spectrum.read()?.power ?? new Float64Array(1))).toBeLessThan(1e-9);
  });

  it('is null before the first stretch is full and after it was cleared', () => {
    const spectrum = createRunningSpectrum(1024, 48_000);
    spectrum.push(noise.subarray(0, 1000));
    expect(spectrum.read()).toBeNull();
    spectrum.gap();
    spectrum.push(noise.subarray(0, 1000));
    expect(spectrum.read()).toBeNull();
    spectrum.push(noise.subarray(0, 24));
    expect(spectrum.read()).not.toBeNull();
    spectrum.clear();
    expect(spectrum.read()).toBeNull();
  });

  it('refuses sizes and limits that make no sense', () => {
    expect(() => createRunningSpectrum(1000, 48_000)).toThrow(RangeError);
    expect(() => createRunningSpectrum(8, 48_000)).toThrow(RangeError);
    expect(() => createRunningSpectrum(1024, 48_000, 0)).toThrow(RangeError);
  });
});
