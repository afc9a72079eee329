import { describe, expect, it } from 'vitest';
import { groupDelay } from '../../../dsp/decay/group-delay';
import { filterSamples } from '../../../dsp/filter/biquad';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const sampleRate = 48_000;
const hz = [50, 200, 1000, 5000, 15_000];

function responseOf(samples: ArrayLike<number>, zeroIndex: number) {
  return { samples: Float64Array.from(samples), sampleRate, zeroIndex };
}

/** First-order all-pass (a + z⁻¹)/(1 + a z⁻¹). */
function allPass(a: number, length = 48_000): Float64Array {
  const click = new Float64Array(length);
  click[0] = 1;
  return filterSamples(click, [{ b0: a, b1: 1, b2: 0, a1: a, a2: 0 }]);
}

describe('groupDelay', () => {
  it('is a pure delay’s own, at every frequency, from zero delay or from the arrival', () => {
    const samples = new Float64Array(9600);
    samples[2880] = -0.3;
    const ir = responseOf(samples, 2400);
    expectClose(
      groupDelay(ir, hz, { noise: null }),
      hz.map(() => 0.01),
      1e-12,
    );
    const early = groupDelay(ir, hz, { noise: null, arrivalSeconds: 0.004, fraction: 3 });
    expectClose(
      early,
      hz.map(() => 0.006),
      1e-9,
    );
  });

  it('is an all-pass’s closed form, (1 − a²)/(1 + 2a cos ω + a²) samples', () => {
    const a = -0.9;
    const delays = groupDelay(responseOf(allPass(a), 0), hz, { noise: null });
    const expected = hz.map((each) => {
      const cos = Math.cos((2 * Math.PI * each) / sampleRate);
      return (1 - a * a) / (1 + 2 * a * cos + a * a) / sampleRate;
    });
    expectClose(delays, expected, 1e-9);
  });

  it('weights by power where it is smoothed: a click and a late weak one', () => {
    const samples = new Float64Array(48_000);
    samples[1000] = 1;
    samples[1480] = 0.1;
    // The octave from 5 to 10 kHz holds 50 whole ripples: the mean is Σ τ E/Σ E of the two clicks.
    const [delay] = groupDelay(responseOf(samples, 1000), [5000 * Math.SQRT2], {
      noise: null,
      fraction: 1,
    });
    expectClose(delay, (0.01 * 0.01) / 1.01, 1e-7);
  });

  it('is null in the noise', () => {
    const next = gaussian(seededRandom(4));
    const low = { b0: 0.01, b1: 0, b2: 0, a1: -0.99, a2: 0 };
    const click = new Float64Array(24_000);
    click[0] = 1;
    const hiss = (): number => 3e-5 * next();
    const ir = responseOf(
      filterSamples(click, [low, low]).map((one) => one + hiss()),
      0,
    );
    const noise = responseOf(new Float64Array(24_000).map(hiss), 0);
    const [at100, at15k] = groupDelay(ir, [100, 15_000], { noise, afterSeconds: 0.05 });
    const omega = (2 * Math.PI * 100) / sampleRate;
    const pole = 0.99 * (Math.cos(omega) - 0.99);
    const expected = (2 * pole) / (1 - 2 * 0.99 * Math.cos(omega) + 0.99 ** 2) / sampleRate;
    expectClose(at100, expected, 0.1 * expected, 'one bin in noise');
    expect(at15k).toBeNull();
  });

  it('sees the first sound alone through a short window', () => {
    const samples = new Float64Array(48_000);
    samples[2400] = 1;
    samples[4800] = 0.9;
    const ir = responseOf(samples, 2400);
    const window = { noise: null, beforeSeconds: 0.005, afterSeconds: 0.02 };
    expectClose(groupDelay(ir, hz, window), [0, 0, 0, 0, 0], 1e-12);
  });

  it('is null for silence and outside the band, and refuses what is no smoothing', () => {
    const silent = responseOf(new Float64Array(4800), 0);
    expect(groupDelay(silent, [100, 1000], { noise: null })).toEqual([null, null]);
    const click = responseOf([1, 0, 0, 0], 0);
    expect(groupDelay(click, [0, 30_000], { noise: null })).toEqual([null, null]);
    expect(() => groupDelay(click, hz, { noise: null, fraction: 0 })).toThrow(RangeError);
    expect(() => groupDelay(click, hz, { noise: null, afterSeconds: 0 })).toThrow(RangeError);
  });
});
