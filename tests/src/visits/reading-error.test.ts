import { describe, expect, it } from 'vitest';
import { repeatedLevelHalfDb } from '../../../src/visits/reading-error';
import { expectClose } from '../../close';
import { readingOf } from '../proposal/sample-readings';

const margins = { hz: [31.5, 63, 500, 1000, 2000], marginDb: [20, 20, 20, 20, 20] };

describe('repeatedLevelHalfDb', () => {
  it('is as wide as the level’s own interval and what repeats leave, whatever the margins', () => {
    for (const own of [0.02, 0.5]) {
      const levelInterval = [-30 - own, -30 + own] as const;
      const half = repeatedLevelHalfDb(readingOf('FR', { levelDb: -30, levelInterval, margins }));
      expectClose(half, Math.hypot(0.1, own), 1e-9);
    }
  });

  it('goes by the margins where a reading has no interval', () => {
    const old = repeatedLevelHalfDb(readingOf('FR', { levelDb: -30, margins }));
    expectClose(old, Math.hypot(0.1, (10 / Math.LN10) * 1.645 * Math.sqrt(0.02 / 30)), 1e-9);
    expect(repeatedLevelHalfDb(readingOf('FR', { levelInterval: null, margins }))).toBe(old);
  });
});
