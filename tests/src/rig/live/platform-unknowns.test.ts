import { describe, expect, it } from 'vitest';
import { platformUnknowns } from '../../../../src/rig/live/platform-unknowns';

describe('platformUnknowns', () => {
  it.each([
    ['Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)', 5],
    ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 5],
  ])('does not trust the level of a handheld: %s', (userAgent, maxTouchPoints) => {
    expect(platformUnknowns({ userAgent, maxTouchPoints })).toEqual([
      expect.stringContaining('call level'),
    ]);
  });

  it.each([
    ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 0],
    ['Mozilla/5.0 (X11; Linux x86_64)', 10],
  ])('has nothing to say of a desk computer: %s', (userAgent, maxTouchPoints) => {
    expect(platformUnknowns({ userAgent, maxTouchPoints })).toEqual([]);
  });
});
