import { describe, expect, it } from 'vitest';
import { contradictSheet, contradictTogether } from '../../../src/reading/contradict-together';
import { readingOf } from '../proposal/sample-readings';
import { inventedRolloff, inventedTogether } from './told-together';

const pair = inventedTogether(['FL', 'FR'], inventedRolloff(60));
const alone = (f3Hz: number, share?: number) =>
  readingOf('FR', { rolloff: inventedRolloff(f3Hz, share) });

describe('a speaker beside its model', () => {
  it('says nothing while the intervals meet', () => {
    expect(contradictTogether(alone(70), pair)).toBeNull();
    expect(contradictTogether(alone(120, 0.6), pair)).toBeNull();
  });

  it('says both numbers and what to do when they exclude one another', () => {
    // f6 in proportion: 0.76 · 120 = 91.2 within 10 %, and 45.6.
    expect(contradictTogether(alone(120), pair)).toBe(
      'FR alone is 6 dB down at 91 Hz (82 to 100), from 3 seats and 2 speakers at 46 Hz (41 to 50): both cannot be. Repeat FR, and if it stays so, say that it is another model.',
    );
  });

  it('says nothing of what could not be told, nor of a spoilt reading', () => {
    expect(contradictTogether(readingOf('FR', { rolloff: null }), pair)).toBeNull();
    expect(contradictTogether(alone(120), inventedTogether(['FL', 'FR'], null))).toBeNull();
    const clipped = { kind: 'clipped', sentence: 'Clipped.' } as const;
    expect(contradictTogether({ ...alone(120), faults: [clipped] }, pair)).toBeNull();
  });
});

describe('a sheet beside what is heard', () => {
  const beside = (sheetF3Hz: number) =>
    contradictSheet(inventedTogether(['FL', 'FR'], inventedRolloff(60), { sheetF3Hz }));

  it('is believed within 30 % of the interval', () => {
    expect(beside(60)).toBeNull();
    expect(beside(54 / 1.29)).toBeNull();
    expect(beside(66 * 1.29)).toBeNull();
  });

  it('is doubted beyond, with one thing to check', () => {
    expect(beside(54 / 1.31)).toContain('3 dB down at 41 Hz, by what is heard at 60 Hz (54 to 66)');
    expect(beside(66 * 1.31)).toMatch(/Check the sheet’s value\.$/);
  });

  it('is nothing to doubt while there is none', () => {
    expect(contradictSheet(pair)).toBeNull();
  });
});
