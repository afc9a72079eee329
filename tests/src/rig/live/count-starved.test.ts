import { describe, expect, it } from 'vitest';
import { countStarved } from '../../../../src/rig/live/count-starved';

/** Render quanta of 128 frames, 's' with sound and '.' of exact zeros. */
function quanta(pattern: string): Float32Array {
  return Float32Array.from({ length: 128 * pattern.length }, (_, n) =>
    pattern[Math.floor(n / 128)] === 's' ? 0.001 * (1 + (n % 3)) : 0,
  );
}

describe('countStarved', () => {
  it('counts runs of silent quanta between sound', () => {
    expect(countStarved(quanta('ss.sss..s'))).toBe(2);
  });

  it('does not count silence before the first sound, after the last, or everywhere', () => {
    expect(countStarved(quanta('..sss.'))).toBe(0);
    expect(countStarved(quanta('....'))).toBe(0);
  });

  it('does not take zero crossings for silence', () => {
    const sound = quanta('sss');
    sound.fill(0, 200, 300);
    expect(countStarved(sound)).toBe(0);
  });
});
