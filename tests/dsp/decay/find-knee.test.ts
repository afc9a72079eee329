import { describe, expect, it } from 'vitest';
import { findKnee } from '../../../dsp/decay/find-knee';
import { median } from '../../../dsp/signal/median';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const rate = 1000;

/** Squared magnitude of complex noise that decays into steady noise of the given power. */
function envelope(seconds: number, noise: number, seed: number, length = 1400) {
  const next = gaussian(seededRandom(seed));
  const power = Float64Array.from({ length }, (_, n) => {
    const mean = 10 ** ((-6 * n) / rate / seconds) + noise;
    return (mean * (next() ** 2 + next() ** 2)) / 2;
  });
  return { power, sampleRate: rate, zeroIndex: 0 };
}

const search = { from: 0, to: 1400, widthHz: rate, noise: null };

describe('findKnee', () => {
  it.each([
    [0.4, 30],
    [0.4, 50],
    [0.8, 60],
    [0.2, 45],
  ])('finds where a decay of %d s goes under %d dB below its start', (seconds, rangeDb) => {
    const errors: number[] = [];
    const rates: number[] = [];
    for (let seed = 0; seed < 20; seed++) {
      const knee = findKnee(envelope(seconds, 10 ** (-rangeDb / 10), seed), search);
      expect(knee?.reached).toBe(true);
      // The line meets the noise after rangeDb of decay.
      errors.push((knee?.at ?? 0) / rate - (seconds * rangeDb) / 60);
      expectClose(
        (knee?.noise ?? 0) / 10 ** (-rangeDb / 10),
        1,
        0.35,
        'a tail is a sample of noise',
      );
      rates.push(((knee?.rate ?? 0) * seconds) / (6 * Math.LN10));
    }
    const mean = errors.reduce((sum, one) => sum + one, 0) / errors.length;
    expectClose(median(rates), 1, 0.1, 'each is read from ten blocks of noise');
    expectClose(mean, 0, (2.5 * seconds) / 60, 'within 2.5 dB of decay');
  });

  it('follows a fall that turns steep before it goes under', () => {
    // 33 dB in 0.5 s, then 600 dB a second down to −90 dB.
    for (let seed = 0; seed < 10; seed++) {
      const next = gaussian(seededRandom(seed));
      const power = Float64Array.from({ length: 1400 }, (_, n) => {
        const t = n / rate;
        const db = t < 0.5 ? (-60 * t) / 0.9 : -33.333 - 600 * (t - 0.5);
        return ((10 ** (db / 10) + 1e-9) * (next() ** 2 + next() ** 2)) / 2;
      });
      const knee = findKnee({ power, sampleRate: rate, zeroIndex: 0 }, { ...search, noise: 1e-9 });
      expectClose((knee?.at ?? 0) / rate, 0.5 + 56.667 / 600, 0.02, 'blocks of 7 ms');
    }
  });

  it('stands at the end of a record that ends before the noise', () => {
    const knee = findKnee(envelope(1.5, 1e-12, 3), { ...search, noise: 1e-12 });
    expect(knee?.reached).toBe(false);
    expect(knee?.at).toBe(1400);
    expectClose(Math.log10(knee?.power ?? 1), -5.6, 0.2, 'the last blocks of a noise');
  });

  it('finds none in noise alone, and none in silence', () => {
    const power = envelope(1e-9, 1, 5).power;
    expect(findKnee({ power, sampleRate: rate, zeroIndex: 0 }, search)).toBeNull();
    const silent = { power: new Float64Array(1400), sampleRate: rate, zeroIndex: 0 };
    expect(findKnee(silent, search)).toBeNull();
  });
});
