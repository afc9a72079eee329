import { describe, expect, it } from 'vitest';
import { largestMagnitude } from '../../../dsp/level/largest';

describe('largestMagnitude', () => {
  it('is the largest sample whatever its sign, and 0 for none', () => {
    expect(largestMagnitude(Float64Array.of(0.5, -0.75, 0.25))).toBe(0.75);
    expect(largestMagnitude(Float32Array.of(0.5, -0.25))).toBe(0.5);
    expect(largestMagnitude(new Float64Array(0))).toBe(0);
  });
});
