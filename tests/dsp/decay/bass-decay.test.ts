import { describe, expect, it } from 'vitest';
import { bassDecay } from '../../../dsp/decay/bass-decay';
import { expectClose } from '../../close';
import { ringing } from './ringing';

describe('bassDecay', () => {
  it('shows a mode at its frequency, falling by 60 dB in its decay time', () => {
    const ir = ringing([{ hz: 56.6, seconds: 0.6, amplitude: 1 }], 1e-7, 1);
    const noise = ringing([], 1e-7, 2);
    const { hz, seconds, db } = bassDecay(ir, { noise, arrivalSeconds: 0 });
    const columns = seconds.length;
    const at = (row: number, t: number): number => db[row * columns + Math.round(t / 0.01)] ?? 0;
    const loudest = hz.reduce((best, _, row) => (at(row, 0.3) > at(best, 0.3) ? row : best), 0);
    expectClose((hz[loudest] ?? 0) / 56.6, 1, 2 ** (0.5 / 24) - 1 + 1e-3);
    expectClose(at(loudest, 0.5) - at(loudest, 0.2), -30, 0.2, 'the blur of the onset');
    expect(Math.max(...db)).toBe(0);
  });

  it('blurs a click by 0.441 over the width of the band', () => {
    const samples = new Float64Array(72_000);
    samples[24_000] = 1;
    const ir = { samples, sampleRate: 48_000, zeroIndex: 24_000 };
    for (const fraction of [3, 6]) {
      const stepSeconds = 0.0005;
      const picture = bassDecay(ir, { noise: null, fraction, stepSeconds, spanSeconds: 0.25 });
      const columns = picture.seconds.length;
      picture.hz.forEach((hz, row) => {
        const level = (n: number): number => picture.db[row * columns + n] ?? 0;
        let n = 0;
        while (level(n) > level(0) - 10 * Math.log10(2)) n++;
        const into = (level(n - 1) - level(0) + 3.0103) / (level(n - 1) - level(n));
        const width = hz * (2 ** (0.5 / fraction) - 2 ** (-0.5 / fraction));
        const blur = 2 * (n - 1 + into) * stepSeconds;
        expectClose(blur * width, 0.441, 0.012, 'straight lines between powers');
        expectClose(picture.blurSeconds[row], 0.441271 / width, 1e-6);
      });
    }
  });

  it('goes down to the noise and no further', () => {
    const ir = ringing([{ hz: 56.6, seconds: 0.3, amplitude: 1 }], 1e-3, 1);
    const { hz, seconds, db, floorDb } = bassDecay(ir, {
      noise: ringing([], 1e-3, 2),
      arrivalSeconds: 0,
    });
    const columns = seconds.length;
    let over = 0;
    hz.forEach((_, row) => {
      const tail = db.subarray(row * columns + 70, (row + 1) * columns);
      for (const level of tail) {
        expect(level).toBeGreaterThanOrEqual(floorDb[row] ?? 0);
        over += (level - (floorDb[row] ?? 0)) / tail.length / hz.length;
      }
    });
    // Noise over its own mean power: ∫ of 10 log p above p = 1 for an exponential p, 0.95 dB.
    expectClose(over, 0.95, 0.6, 'one stretch of noise against another');
  });

  it('puts the noise where it lies under a click', () => {
    const rms = 1e-5;
    const ir = ringing([], rms, 1);
    ir.samples[ir.zeroIndex] = 1;
    const picture = bassDecay(ir, { noise: ringing([], rms, 2), arrivalSeconds: 0 });
    // Gain e^(−x²/2σ²): a click peaks at 2σ²·2π/2 over fs², white noise keeps 2σ√π/fs of its power.
    picture.hz.forEach((hz, row) => {
      const sigma = (hz * (2 ** (1 / 12) - 2 ** (-1 / 12))) / (2 * Math.sqrt(Math.LN2));
      const click = (4 * Math.PI * sigma ** 2) / 48_000 ** 2;
      const hiss = (rms ** 2 * 2 * sigma * Math.sqrt(Math.PI)) / 48_000;
      const level = picture.db[row * picture.seconds.length] ?? 0;
      const margin = (picture.floorDb[row] ?? 0) - level;
      expectClose(margin, 10 * Math.log10(hiss / click), 4, 'a second and a half of noise');
    });
  });

  it('is all floor in silence', () => {
    const ir = { samples: new Float64Array(48_000), sampleRate: 48_000, zeroIndex: 0 };
    const { db } = bassDecay(ir, { noise: null });
    expect(db.every((level) => level === -120)).toBe(true);
  });

  it('refuses a grid that is none', () => {
    const ir = ringing([], 1, 1);
    expect(() => bassDecay(ir, { noise: null, bandHz: [300, 20] })).toThrow(RangeError);
    expect(() => bassDecay(ir, { noise: null, stepSeconds: 0 })).toThrow(RangeError);
    expect(() => bassDecay(ir, { noise: null, fraction: 0 })).toThrow(RangeError);
  });
});
