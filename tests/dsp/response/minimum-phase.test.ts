import { describe, it } from 'vitest';
import { sectionsResponse, type Biquad } from '../../../dsp/filter/biquad';
import { minimumPhase } from '../../../dsp/response/minimum-phase';
import { expectClose } from '../../close';

const size = 4096;

function spectrumOf(section: Biquad): { logMagnitude: Float64Array; phase: Float64Array } {
  const responses = Array.from({ length: size / 2 + 1 }, (_, k) =>
    sectionsResponse([section], k / size, 1),
  );
  return {
    logMagnitude: Float64Array.from(responses, ({ re, im }) => Math.log(Math.hypot(re, im))),
    phase: Float64Array.from(responses, ({ re, im }) => Math.atan2(im, re)),
  };
}

describe('minimumPhase', () => {
  it.each([
    ['all-pole', { b0: 1, b1: 0, b2: 0, a1: -1.2, a2: 0.6 }],
    ['zeros inside the unit circle', { b0: 1, b1: 0.9, b2: 0.4, a1: 0, a2: 0 }],
    ['both', { b0: 0.7, b1: -0.3, b2: 0.1, a1: 0.5, a2: 0.3 }],
  ])('gives the phase of a minimum-phase filter, %s', (_, section) => {
    const { logMagnitude, phase } = spectrumOf(section);
    expectClose(minimumPhase(logMagnitude), phase, 1e-9);
  });

  it('is 0 for a plain gain', () => {
    const gain = new Float64Array(size / 2 + 1).fill(Math.log(3));
    expectClose(minimumPhase(gain), new Float64Array(size / 2 + 1), 1e-12);
  });
});
