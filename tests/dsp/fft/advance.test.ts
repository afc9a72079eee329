import { describe, expect, it } from 'vitest';
import { advance } from '../../../dsp/fft/advance';
import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import { expectClose } from '../../close';

const size = 4096;

/** A tone burst that is nothing at its ends, `late` samples late. */
function burst(late: number): Float64Array {
  return Float64Array.from({ length: size }, (_, n) => {
    const t = n - 1500 - late;
    return Math.exp(-((t / 150) ** 2)) * Math.cos(0.9 * t);
  });
}

describe('advance', () => {
  it.each([0, 1, 0.25, 0.999, -3.7, 700.5])('moves a signal %d samples to the left', (samples) => {
    const spectrum = realSpectrum(burst(samples), size);
    advance(spectrum, samples, size);
    expectClose(realSignal(spectrum, size), burst(0), 1e-11);
  });

  it('leaves the spectrum alone for no move', () => {
    const spectrum = realSpectrum(burst(0), size);
    advance(spectrum, 0, size);
    expect(spectrum).toEqual(realSpectrum(burst(0), size));
  });
});
