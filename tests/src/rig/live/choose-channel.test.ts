import { describe, expect, it } from 'vitest';
import { chooseChannel } from '../../../../src/rig/live/choose-channel';

const loud = Float32Array.from([0.4, -0.4, 0.4]);
const hiss = Float32Array.from([0.001, -0.001, 0.001]);
const silent = new Float32Array(3);

describe('chooseChannel', () => {
  it('takes the side on which the microphone sits', () => {
    expect(chooseChannel([loud, silent])).toBe(0);
    expect(chooseChannel([silent, loud])).toBe(1);
    expect(chooseChannel([hiss, loud])).toBe(1);
  });

  it('takes the first of two equal sides, and of two silent ones', () => {
    expect(chooseChannel([loud, loud.map((value) => 1.05 * value)])).toBe(0);
    expect(chooseChannel([silent, silent])).toBe(0);
  });

  it('refuses to choose from nothing', () => {
    expect(() => chooseChannel([])).toThrow(RangeError);
  });
});
