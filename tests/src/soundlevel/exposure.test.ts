import { describe, expect, it } from 'vitest';
import { addExposure, exposureOfCapture, noExposure } from '../../../src/soundlevel/exposure';
import { expectClose } from '../../close';

const calibration = {
  offsetDb: 120,
  how: 'sound level meter',
  at: '2026-01-01T00:00:00Z',
  microphone: 'invented',
} as const;

describe('addExposure', () => {
  it('counts a quarter of a day for an hour at 88 dB(A)', () => {
    const after = addExposure(noExposure, -32, 3600, calibration);
    expectClose(after, { dose: 0.25, equivalentDb: 88, seconds: 3600 }, 1e-9);
  });

  it('adds sounds of different level by their energy', () => {
    const loud = addExposure(noExposure, -20, 60, calibration);
    const both = addExposure(loud, -30, 60, calibration);
    // (10¹⁰ + 10⁹)/2 as a level.
    expectClose(both.equivalentDb, 97.4036, 1e-3);
    expectClose(both.dose, 60 / 900 + 60 / (28_800 / 2 ** (5 / 3)), 1e-9);
    expect(both.seconds).toBe(120);
  });

  it('knows only the time while the microphone is not calibrated', () => {
    const after = addExposure(addExposure(noExposure, -20, 60, null), -20, 30, null);
    expect(after).toEqual({ dose: null, equivalentDb: null, seconds: 90 });
  });

  it('counts anew from the first calibrated sound, and leaves out what is not', () => {
    const blind = addExposure(noExposure, -20, 60, null);
    const known = addExposure(blind, -35, 10, calibration);
    expectClose(known, { dose: 10 / 28_800, equivalentDb: 85, seconds: 10 }, 1e-9);
    expect(addExposure(known, -10, 1000, null)).toEqual(known);
  });

  it('takes digital silence', () => {
    const after = addExposure(noExposure, -300, 10, calibration);
    expectClose(after.dose, 0, 1e-9);
    expect(Number.isFinite(after.equivalentDb)).toBe(true);
  });

  it('refuses what is no level or time', () => {
    expect(() => addExposure(noExposure, Number.NaN, 1, null)).toThrow(RangeError);
    expect(() => addExposure(noExposure, -20, -1, null)).toThrow(RangeError);
  });
});

describe('exposureOfCapture', () => {
  it('weights a take and adds it', () => {
    const rate = 48_000;
    const samples = Float32Array.from({ length: 3 * rate }, (_, n) => {
      return 0.1 * Math.SQRT2 * Math.sin((2 * Math.PI * 125.892541 * n) / rate);
    });
    const after = exposureOfCapture(noExposure, samples, rate, calibration);
    expectClose(after.equivalentDb, 100 - 16.1, 0.1, 'A weighting at 125 Hz, to 0.1 dB');
    expect(after.seconds).toBe(3);
  });

  it('adds nothing for an empty take', () => {
    expect(exposureOfCapture(noExposure, new Float32Array(0), 48_000, null)).toEqual(noExposure);
  });
});
