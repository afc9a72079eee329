import { describe, expect, it } from 'vitest';
import { checkLinearity } from '../../../src/soundlevel/check-linearity';
import { expectClose } from '../../close';

const sixth = 10 ** -0.6;

describe('checkLinearity', () => {
  it('passes 6 dB', () => {
    const checked = checkLinearity({ louder: 1, quieter: sixth, floor: 0.02, count: 1000 });
    expectClose(checked, { stepDb: 6, passes: true }, 1e-9);
  });

  it('passes 5.75 dB and fails 5.6 and 6.4 dB', () => {
    const passes = (db: number): boolean | undefined =>
      checkLinearity({ louder: 1, quieter: 10 ** (-db / 10), floor: 1e-4, count: 1000 })?.passes;
    expect([5.75, 5.6, 6.4].map(passes)).toEqual([true, false, false]);
  });

  it('cannot tell close to the noise', () => {
    expect(checkLinearity({ louder: 1, quieter: sixth, floor: 0.05, count: 1e6 })).toBeNull();
    expect(checkLinearity({ louder: 1, quieter: -0.01, floor: 0.6, count: 1000 })).toBeNull();
  });

  it('cannot tell when few bins leave the noise its say', () => {
    const levels = { louder: 1, quieter: sixth, floor: 0.01 };
    expect(checkLinearity({ ...levels, count: 34 })).toBeNull();
    expect(checkLinearity({ ...levels, count: 2000 })?.passes).toBe(true);
  });
});
