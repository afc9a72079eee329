import { describe, expect, it } from 'vitest';
import { excessPhase } from '../../../dsp/decay/excess-phase';
import { filterSamples, type Biquad } from '../../../dsp/filter/biquad';
import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const sampleRate = 48_000;
const hz = [100, 500, 1000, 4000, 12_000];
/** Zeros and poles inside the unit circle. */
const minimum: Biquad = { b0: 0.7, b1: -0.3, b2: 0.1, a1: -0.5, a2: 0.3 };
const a = -0.8;
const allPass: Biquad = { b0: a, b1: 1, b2: 0, a1: a, a2: 0 };

function responseOf(sections: readonly Biquad[], delay = 1000, gain = 1) {
  const click = new Float64Array(24_000);
  click[delay] = gain;
  return { samples: filterSamples(click, sections), sampleRate, zeroIndex: 0 };
}

/** Phase of the all-pass (a + z⁻¹)/(1 + a z⁻¹): −ω + 2 atan(a sin ω/(1 + a cos ω)), degrees. */
function allPassDegrees(each: number): number {
  const omega = (2 * Math.PI * each) / sampleRate;
  const turn = 2 * Math.atan2(a * Math.sin(omega), 1 + a * Math.cos(omega));
  return ((turn - omega) * 180) / Math.PI;
}

function allPassSeconds(each: number): number {
  const cos = Math.cos((2 * Math.PI * each) / sampleRate);
  return (1 - a * a) / (1 + 2 * a * cos + a * a) / sampleRate;
}

describe('excessPhase', () => {
  it('is 0 for a minimum-phase response at its arrival', () => {
    const { degrees, groupDelaySeconds } = excessPhase(
      responseOf([minimum]),
      hz,
      1000 / sampleRate,
      { noise: null },
    );
    expectClose(
      degrees,
      hz.map(() => 0),
      1e-6,
    );
    expectClose(
      groupDelaySeconds,
      hz.map(() => 0),
      1e-9,
    );
  });

  it('is the all-pass beside a minimum-phase response, unwrapped beyond 180°', () => {
    const { degrees, groupDelaySeconds } = excessPhase(
      responseOf([minimum, allPass, allPass]),
      hz,
      1000 / sampleRate,
      { noise: null },
    );
    const expected = hz.map((each) => 2 * allPassDegrees(each));
    // Whole turns are free: it is within 180° where the response is strongest.
    const turns = 360 * Math.round(((degrees[0] ?? 0) - (expected[0] ?? 0)) / 360);
    expectClose(
      degrees,
      expected.map((one) => one + turns),
      0.01,
      'straight lines between bins',
    );
    expectClose(
      groupDelaySeconds,
      hz.map((each) => 2 * allPassSeconds(each)),
      1e-7,
    );
  });

  it('is 180° for an inverted response', () => {
    const { degrees } = excessPhase(responseOf([minimum], 1000, -1), hz, 1000 / sampleRate, {
      noise: null,
    });
    expectClose(
      degrees.map((one) => Math.abs(one ?? 0)),
      hz.map(() => 180),
      1e-6,
    );
  });

  it('leans by a delay that the arrival leaves', () => {
    const { degrees, groupDelaySeconds } = excessPhase(
      responseOf([minimum], 1024),
      [500, 1500],
      1000 / sampleRate,
      { noise: null, fraction: 3 },
    );
    // 24 samples are 0.5 ms: −180° for each kHz.
    expectClose((degrees[1] ?? 0) - (degrees[0] ?? 0), -180, 1e-5);
    expectClose(groupDelaySeconds, [0.0005, 0.0005], 1e-9);
  });

  it('asks no phase of the sweep’s own skirts', () => {
    const ir = responseOf([minimum], 12_000);
    const spectrum = realSpectrum(ir.samples, 32_768);
    for (let k = 0; k < spectrum.length / 2; k++) {
      const each = (k * sampleRate) / 32_768;
      const low = 0.5 * (1 - Math.cos(Math.PI * Math.min(Math.max((each - 4) / 20, 0), 1)));
      const high = 0.5 * (1 + Math.cos(Math.PI * Math.min(Math.max((each - 18_400) / 1600, 0), 1)));
      for (const part of [0, 1]) {
        spectrum[2 * k + part] = low * high * (spectrum[2 * k + part] ?? 0);
      }
    }
    const cut = { ...ir, samples: realSignal(spectrum, 32_768) };
    const band = { noise: null, bandHz: [24, 18_400] } as const;
    const kept = excessPhase(cut, hz, 0.25, band).degrees;
    expectClose(
      kept,
      hz.map(() => 0),
      4,
      'the magnitude above 18.4 kHz is not known',
    );
    const naive = excessPhase(cut, [12_000], 0.25, { noise: null }).degrees;
    expect(Math.abs(naive[0] ?? 0)).toBeGreaterThan(20);
  });

  it('is null in the noise and in silence', () => {
    const next = gaussian(seededRandom(4));
    const hiss = (): number => 0.05 * next();
    const ir = responseOf([minimum]);
    const noisy = { ...ir, samples: ir.samples.map((one) => one + hiss()) };
    const noise = { ...ir, samples: ir.samples.map(hiss) };
    const { degrees, groupDelaySeconds } = excessPhase(noisy, hz, 1000 / sampleRate, { noise });
    expect(degrees).toEqual(hz.map(() => null));
    expect(groupDelaySeconds).toEqual(hz.map(() => null));
    const silent = { ...ir, samples: new Float64Array(4800) };
    expect(excessPhase(silent, hz, 0, { noise: null }).degrees).toEqual(hz.map(() => null));
  });

  it('refuses a band that is none', () => {
    const options = { noise: null, bandHz: [500, 100] } as const;
    expect(() => excessPhase(responseOf([minimum]), hz, 0, options)).toThrow(RangeError);
  });
});
