import { describe, expect, it } from 'vitest';
import { logGrid } from '../../../dsp/response/smoothing';
import { windowedSpectrum } from '../../../dsp/response/windowed-spectrum';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const rate = 48_000;

/** The window as it is defined, over time in periods from the arrival on. */
function definedWindow(periods: number, cycles: number): number {
  if (periods < 0) return periods > -1 ? 0.5 * (1 + Math.cos(Math.PI * periods)) : 0;
  return periods < cycles ? 0.5 * (1 + Math.cos((Math.PI * periods) / cycles)) : 0;
}

describe('windowedSpectrum', () => {
  it('is the sum it is defined as, for a fractional arrival', () => {
    const normal = gaussian(seededRandom(51));
    const samples = Float64Array.from({ length: 6000 }, (_, n) => normal() * Math.exp(-n / 900));
    const ir = { samples, sampleRate: rate, zeroIndex: 1500 };
    const arrivalSeconds = 200.37 / rate;
    // From 100 Hz up six periods fit into the response, and one before the arrival.
    const hz = [100, 317.3, 1000, 7123, 23_000];
    const read = windowedSpectrum(ir, { arrivalSeconds, cycles: 6, hz });
    for (const [k, f] of hz.entries()) {
      let re = 0;
      let im = 0;
      for (const [n, value] of samples.entries()) {
        const t = (n - 1500) / rate - arrivalSeconds;
        const weighted = value * definedWindow(t * f, 6);
        re += weighted * Math.cos(2 * Math.PI * f * t);
        im -= weighted * Math.sin(2 * Math.PI * f * t);
      }
      expectClose(read.power[k], re * re + im * im, 1e-9 * (re * re + im * im));
      expectClose(read.phaseRadians[k], Math.atan2(im, re), 1e-8);
    }
  });

  it('lets an echo in as far as the window reaches it', () => {
    // H = 1 + g·w(d·f)·e^(−2πifd).
    const samples = new Float64Array(20_000);
    const [arrival, delay, gain, cycles] = [2000, 480, 0.5, 8];
    samples[arrival] = 1;
    samples[arrival + delay] = gain;
    const hz = logGrid(40, 20_000, 24);
    const seconds = delay / rate;
    const { power } = windowedSpectrum(
      { samples, sampleRate: rate, zeroIndex: 0 },
      { arrivalSeconds: arrival / rate, cycles, hz },
    );
    const expected = Array.from(hz, (f) => {
      const under = gain * definedWindow(seconds * f, cycles);
      return 1 + under * under + 2 * under * Math.cos(2 * Math.PI * f * seconds);
    });
    expectClose([...power], expected, 1e-9);
    // Eight periods are shorter than the delay from 800 Hz up: the direct sound alone.
    expectClose([...power].slice(-60), new Array<number>(60).fill(1), 1e-12);
  });

  it('is flat with no phase for one sample at the arrival', () => {
    const samples = new Float64Array(3000);
    samples[700] = -2;
    const ir = { samples, sampleRate: rate, zeroIndex: 500 };
    const read = windowedSpectrum(ir, { arrivalSeconds: 200 / rate, cycles: 5, hz: [200, 5000] });
    expectClose([...read.power], [4, 4], 1e-12);
    expectClose([...read.phaseRadians].map(Math.abs), [Math.PI, Math.PI], 1e-9);
  });

  it('is limited by the end of the response, and never wider than it', () => {
    const samples = new Float64Array(10_600).fill(1);
    const ir = { samples, sampleRate: rate, zeroIndex: 1000 };
    const hz = [1, 4];
    const read = windowedSpectrum(ir, { arrivalSeconds: 0, cycles: 4, hz });
    // 9600 samples from the arrival on are 0.2 s.
    expectClose(read.limitHz, 20, 1e-9);
    for (const [k, f] of hz.entries()) {
      let re = 0;
      let im = 0;
      for (let n = -1000; n < 9600; n++) {
        const w = 0.5 * (1 + Math.cos((Math.PI * n) / (n < 0 ? 1001 : 9600)));
        re += w * Math.cos((2 * Math.PI * f * n) / rate);
        im -= w * Math.sin((2 * Math.PI * f * n) / rate);
      }
      expectClose(read.power[k], re * re + im * im, 1e-9 * (re * re + im * im));
    }
  });

  it('refuses what makes no sense', () => {
    const ir = { samples: new Float64Array(100), sampleRate: rate, zeroIndex: 0 };
    const good = { arrivalSeconds: 0, cycles: 4, hz: [1000] };
    expect(windowedSpectrum(ir, good).power[0]).toBe(0);
    for (const wrong of [
      { cycles: 0 },
      { cycles: NaN },
      { arrivalSeconds: 1 },
      { arrivalSeconds: NaN },
      { hz: [0] },
      { hz: [24_001] },
      { hz: [NaN] },
    ]) {
      expect(() => windowedSpectrum(ir, { ...good, ...wrong })).toThrow(RangeError);
    }
  });
});
