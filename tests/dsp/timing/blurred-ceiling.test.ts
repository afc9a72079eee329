import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { findBlurredCeiling } from '../../../dsp/timing/blurred-ceiling';

const noiseRms = 2e-4;
const rate = 48000;

/** A sweep whose level wanders as in a room, or does not; cut off at `ceiling`; noise on top. */
function capture(options: { wander: number; ceiling: number; seed: number }): Float64Array {
  const normal = gaussian(seededRandom(options.seed));
  const sweep = sweepSignal(synchronisedSweep(20, 20000, 2 ** 16, rate));
  return sweep.map((value, n) => {
    const octave = (n / sweep.length) * 10;
    const level = 0.4 * 10 ** ((options.wander * Math.sin(3.1 * octave + options.seed)) / 20);
    const cut = Math.min(Math.max(level * value, -options.ceiling), options.ceiling);
    return cut + noiseRms * normal();
  });
}

const find = (samples: Float64Array, rms = noiseRms): number | null =>
  findBlurredCeiling(samples, 0, samples.length, rms);

describe('findBlurredCeiling', () => {
  it.each([0, 3, 8])('finds a ceiling under noise in sweeps that wander by %i dB', (wander) => {
    for (let seed = 1; seed <= 8; seed++) {
      const top = 0.4 * 10 ** (wander / 20);
      const ceiling = 0.7 * top;
      const found = find(capture({ wander, ceiling, seed }));
      expect(Math.abs((found ?? 0) - ceiling)).toBeLessThan(0.01 * ceiling);
    }
  });

  it.each([0, 1, 3, 8])('raises no alarm over whole sweeps that wander by %i dB', (wander) => {
    for (let seed = 1; seed <= 12; seed++) {
      expect(find(capture({ wander, ceiling: 9, seed }))).toBeNull();
    }
  });

  it('cannot tell where the noise hides the ceiling', () => {
    expect(find(capture({ wander: 3, ceiling: 0.3, seed: 1 }), 0.01)).toBeNull();
  });

  it('is silent about silence and throws for bounds outside the samples', () => {
    expect(find(new Float64Array(100))).toBeNull();
    expect(() => findBlurredCeiling(new Float64Array(10), 0, 11, 0)).toThrow(RangeError);
  });
});
