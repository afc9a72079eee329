import { describe, expect, it } from 'vitest';
import { bandLevelDb, bandPower, bandShares } from '../../../dsp/level/band-level';
import { amplitudeToDb, dbToAmplitude, dbToPower, powerToDb } from '../../../dsp/level/decibels';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { periodicPink } from '../../../dsp/signal/pink';
import { convolve } from '../../../dsp/fft/convolve';
import { expectClose } from '../../close';

const single = (
  value: number,
): { samples: Float64Array; sampleRate: number; zeroIndex: number } => ({
  samples: Float64Array.of(0, value, 0, 0),
  sampleRate: 48_000,
  zeroIndex: 0,
});

describe('bandLevelDb', () => {
  it('is the gain of a flat response in every band', () => {
    for (const [low, high] of [
      [500, 2000],
      [30, 80],
      [20, 24_000],
    ] as const) {
      expectClose(bandLevelDb(single(0.1), low, high), -20, 1e-9);
    }
  });

  it('weighs octaves alike: power ∝ f means (f2 − f1)/ln(f2/f1)', () => {
    const spectrum = { hzPerBin: 1, power: Float64Array.from({ length: 24_001 }, (_, k) => k) };
    expectClose(bandPower(spectrum, 500, 2000), 1500 / Math.log(4), 0.01);
  });

  it('agrees with the level of periodic pink noise sent through the response', () => {
    const spec = { lowHz: 500, highHz: 2000, periodSamples: 2 ** 15, sampleRate: 48_000, seed: 2 };
    const pink = periodicPink(spec);
    // A reflection 2 ms later: a comb with teeth inside the band.
    const samples = new Float64Array(97);
    samples[0] = 1;
    samples[96] = 0.7;
    const twice = Float64Array.from(
      { length: 2 * pink.length },
      (_, n) => pink[n % pink.length] ?? 0,
    );
    const heard = convolve(twice, samples).slice(pink.length, 2 * pink.length);
    const power = (signal: Float64Array): number => signal.reduce((sum, v) => sum + v * v, 0);
    const expected = 10 * Math.log10(power(heard) / power(pink));
    const read = bandLevelDb({ samples, sampleRate: 48_000, zeroIndex: 0 }, 500, 2000);
    expectClose(read, expected, 0.01, 'the noise has lines, the mean has none');
  });

  it('reads a band between two bins from its nearest bin', () => {
    const spectrum = { hzPerBin: 100, power: Float64Array.of(1, 2, 3, 4) };
    expectClose(bandPower(spectrum, 190, 205), 3, 1e-12);
  });

  it('gives −300 dB for silence, never minus infinity', () => {
    expect(bandLevelDb(single(0), 500, 2000)).toBe(-300);
  });

  it.each([
    [0, 100],
    [100, 100],
    [100, 24_001],
    [NaN, 100],
  ])('refuses a band from %d to %d Hz', (low, high) => {
    expect(() => bandPower(powerSpectrum(single(1)), low, high)).toThrow(RangeError);
  });
});

describe('decibels', () => {
  it('go there and back', () => {
    for (const db of [-120, -6, 0, 3, 40]) {
      expectClose(powerToDb(dbToPower(db)), db, 1e-9);
      expectClose(amplitudeToDb(dbToAmplitude(db)), db, 1e-9);
      expectClose(amplitudeToDb(-dbToAmplitude(db)), db, 1e-9);
    }
  });

  it('refuse a negative power and NaN', () => {
    expect(() => powerToDb(-1e-9)).toThrow(RangeError);
    expect(() => amplitudeToDb(NaN)).toThrow(RangeError);
  });
});

describe('bandShares', () => {
  const spectrum = { hzPerBin: 2, power: new Float64Array(501) };

  it('are ln(upper/lower edge) of each bin over that of the band, those at its ends cut', () => {
    const { first, shares } = bandShares(spectrum, 100.5, 900);
    expect(first).toBe(50);
    expect(shares).toHaveLength(401);
    const whole = Math.log(900 / 100.5);
    expectClose(shares[0] ?? 0, Math.log(101 / 100.5) / whole, 1e-12);
    expectClose(shares[100] ?? 0, Math.log(301 / 299) / whole, 1e-12);
    expectClose(shares[400] ?? 0, Math.log(900 / 899) / whole, 1e-12);
    expectClose(
      shares.reduce((sum, share) => sum + share, 0),
      1,
      1e-12,
    );
  });

  it('refuses a band beyond the spectrum', () => {
    expect(() => bandShares(spectrum, 100, 1001)).toThrow(RangeError);
  });
});
