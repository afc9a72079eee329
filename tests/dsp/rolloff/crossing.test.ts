import { describe, expect, it } from 'vitest';
import { sealedResponse, ventedResponse } from '../../../dsp/rolloff/box-response';
import { complex } from '../../../dsp/rolloff/complex';
import { crossingHz } from '../../../dsp/rolloff/crossing';
import { expectClose } from '../../close';

describe('crossingHz', () => {
  it.each([3, 6, 10, 20])('finds where a Butterworth high-pass is %d dB down', (db) => {
    // |H|² = x⁸/(1 + x⁸), so x = (10^(db/10) − 1)^(−1/8).
    const x = (10 ** (db / 10) - 1) ** (-1 / 8);
    expectClose(crossingHz(ventedResponse(50, 0), db), 50 * x, 1e-6);
  });

  it('takes the foot of a peak, not its flank', () => {
    // Q = 4 peaks by 12 dB at 80 Hz; |H|² = x⁴/((1 − x²)² + x²/16) = 1/4 has one root below it.
    const x2 = (-(2 - 1 / 16) + Math.sqrt((2 - 1 / 16) ** 2 + 12)) / 6;
    const found = crossingHz(sealedResponse(80, 4), 10 * Math.log10(4));
    expectClose(found, 80 * Math.sqrt(x2), 1e-6);
  });

  it('takes the highest of several crossings', () => {
    const dipped = (hz: number) => complex(hz > 40 && hz < 60 ? 0.1 : hz < 20 ? 0.01 : 1, 0);
    expectClose(crossingHz(dipped, 10), 60, 1e-6);
  });

  it('says null for a response that never falls so far or has fallen already', () => {
    expect(crossingHz(() => complex(1, 0), 3)).toBeNull();
    expect(crossingHz(sealedResponse(5000, 0.7), 3, 2000)).toBeNull();
  });

  it('refuses a fall or a range that is none', () => {
    expect(() => crossingHz(() => complex(1, 0), 0)).toThrow('db must be positive, got 0');
    expect(() => crossingHz(() => complex(1, 0), 3, 10, 20)).toThrow(RangeError);
    expect(() => crossingHz(() => complex(1, 0), 3, 10, 0)).toThrow(RangeError);
  });
});
