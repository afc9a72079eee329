import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { measureDecay } from '../../../dsp/rolloff/measure-decay';
import { averageRolloffBands, rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const rate = 4000;
const length = 5400;
const size = 8192;

/** White noise that decays by 60 dB in `seconds` from sample 400 on, over steady noise. */
function decaying(seconds: number, seed: number, floor = 0): Float64Array {
  const normal = gaussian(seededRandom(seed));
  return Float64Array.from({ length }, (_, n) => {
    const level = n < 400 ? 0 : 10 ** ((-3 * (n - 400)) / (seconds * rate));
    return level * normal() + floor * normal();
  });
}

function measured(samples: Float64Array, noiseShare = 0): number | null {
  return measureDecay(realSpectrum(samples, size), rate / size, length / rate, noiseShare);
}

describe('measureDecay', () => {
  it.each([0.2, 0.4, 0.8, 1.4])('finds a decay of %d s on average over draws', (seconds) => {
    const logs = Array.from({ length: 12 }, (_, i) =>
      Math.log(measured(decaying(seconds, i)) ?? 0),
    );
    const mean = Math.exp(logs.reduce((sum, value) => sum + value, 0) / logs.length);
    expectClose(mean / seconds, 1, 0.1, 'twelve draws of noise');
  });

  it('takes off the noise it is told of', () => {
    const floor = 0.01;
    const energy = (rate * 0.3) / (2 * 6.9078);
    const share = (floor ** 2 * length) / (energy + floor ** 2 * length);
    const logs = Array.from({ length: 12 }, (_, i) =>
      Math.log(measured(decaying(0.3, 40 + i, floor), share) ?? 0),
    );
    const mean = Math.exp(logs.reduce((sum, value) => sum + value, 0) / logs.length);
    expectClose(mean, 0.3, 0.04, 'twelve draws of noise');
  });

  it('says null when the decay is longer than the response, or noise hides it', () => {
    expect(measured(decaying(30, 3))).toBeNull();
    expect(measured(decaying(0.4, 3), 0.2)).toBeNull();
    expect(measured(decaying(0.4, 3), Number.NaN)).toBeNull();
  });

  it('stands beside the bands, and as the geometric mean beside their average', () => {
    const [a, b] = [0.25, 0.5].map((seconds, i) => {
      const samples = new Float64Array(8000);
      samples.set(decaying(seconds, 60 + i), 600);
      samples[1000] = 5;
      return rolloffBands({ samples, sampleRate: rate, zeroIndex: 1000 }, null);
    });
    if (!a || !b) throw new Error('two readings');
    expect(a.decaySeconds).not.toBeNull();
    const product = (a.decaySeconds ?? 0) * (b.decaySeconds ?? 0);
    expectClose(averageRolloffBands([a, b]).decaySeconds, Math.sqrt(product), 1e-9);
    const unknown = { ...b, decaySeconds: null };
    expectClose(averageRolloffBands([a, unknown]).decaySeconds, a.decaySeconds, 1e-9);
    expect(averageRolloffBands([unknown]).decaySeconds).toBeNull();
  });
});
