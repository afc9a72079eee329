import { describe, expect, it } from 'vitest';
import { checkNoiseBand, noiseBands } from '../../../src/noise/noise-bands';
import { checkNoiseRequest } from '../../../src/noise/check-noise-request';

describe('noise bands', () => {
  it('hold those of the trade, each of them allowed', () => {
    expect(noiseBands.map(({ lowHz, highHz }) => [lowHz, highHz])).toEqual([
      [10, 20_000],
      [500, 2000],
      [30, 80],
    ]);
    for (const { lowHz, highHz } of noiseBands) expect(checkNoiseBand(lowHz, highHz)).toBeNull();
  });

  it.each([
    [80, 30, /lower limit must lie below/],
    [100, 100, /lower limit must lie below/],
    [9, 100, /between 10 Hz and 22000 Hz/],
    [20, 22_001, /between 10 Hz and 22000 Hz/],
    [100, 120, /third of an octave.*126 Hz/],
    [Number.NaN, 100, /needs two limits/],
  ])('refuse %d to %d Hz in a sentence', (lowHz, highHz, words) => {
    const refused = checkNoiseBand(lowHz, highHz);
    expect(refused?.trouble).toBe('bad-number');
    expect(refused?.sentence).toMatch(words);
  });

  it('may be a third of an octave wide, and as high as the line carries', () => {
    expect(checkNoiseBand(100, 126)).toBeNull();
    expect(checkNoiseBand(20, 21_000, 20_286)?.sentence).toMatch(/20286 Hz/);
  });
});

describe('a request', () => {
  const request = {
    kind: 'noise',
    channel: 'FL',
    lowHz: 20,
    highHz: 20_000,
    gainDb: -20,
    bandsPerOctave: 3,
    averagingSeconds: 15,
  } as const;

  it('may be as the screens make it, at 44.1 kHz too', () => {
    expect(checkNoiseRequest(request, 44_100)).toBeNull();
  });

  it.each([
    [{ gainDb: 1 }, /0 dB or less/],
    [{ gainDb: Number.NaN }, /0 dB or less/],
    [{ bandsPerOctave: 5 }, /bands an octave/],
    [{ averagingSeconds: 2 }, /3 to 120/],
    [{ averagingSeconds: 121 }, /3 to 120/],
    [{ lowHz: 30_000 }, /lower limit/],
  ])('is refused with %o', (change, words) => {
    expect(checkNoiseRequest({ ...request, ...change })?.sentence).toMatch(words);
  });
});
