import { describe, expect, it } from 'vitest';
import { convolve } from '../../../dsp/fft/convolve';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepRateSeconds, sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { readBetween } from '../../../dsp/timing/resample';
import { expectClose } from '../../close';

const rate = 48_000;
const sweep = synchronisedSweep(20, 20_000, 2 ** 16, rate);
const played = sweepSignal(sweep);
const options = { preSamples: 9600, lengthSamples: 48_000 };

function place(signal: Float64Array, at: number, length: number): Float64Array {
  const captured = new Float64Array(length);
  captured.set(signal, at);
  return captured;
}

/** Largest deviation of |H| from 1 in dB between two frequencies. */
function worstDb(samples: Float64Array, lowHz: number, highHz: number): number {
  const { power, hzPerBin } = powerSpectrum({ samples, sampleRate: rate, zeroIndex: 0 }, 0.5);
  let worst = 0;
  for (let k = Math.ceil(lowHz / hzPerBin); k * hzPerBin <= highHz; k++) {
    worst = Math.max(worst, Math.abs(10 * Math.log10(power[k] ?? 0)));
  }
  return worst;
}

function indexOfPeak(samples: Float64Array, from: number, to: number): number {
  let best = from;
  for (let n = from; n < to; n++) {
    if (Math.abs(samples[n] ?? 0) > Math.abs(samples[best] ?? 0)) best = n;
  }
  return best;
}

describe('deconvolveSweep', () => {
  it.each([
    [20, 20_000, 2 ** 16],
    [10, 20_000, 2 ** 17],
    [10, 500, 2 ** 18],
  ])('gives |H| = 1 within 0.01 dB for a unit system, %d to %d Hz', (startHz, endHz, length) => {
    const spec = synchronisedSweep(startHz, endHz, length, rate);
    const captured = place(sweepSignal(spec), 30_000, length + 150_000);
    const pre = Math.ceil((3 / spec.startHz) * rate);
    const ir = deconvolveSweep(captured, 30_000, spec, { preSamples: pre, lengthSamples: 72_000 });
    expect(worstDb(ir.samples, spec.startHz * 1.2, endHz * 0.9)).toBeLessThan(0.01);
  });

  it('puts a delayed, inverted, halved copy where and how it is', () => {
    const captured = place(played, 20_000 + 700, 140_000).map((v) => -0.5 * v);
    const ir = deconvolveSweep(captured, 20_000, sweep, options);
    expect(ir.zeroIndex).toBe(9600);
    const peak = indexOfPeak(ir.samples, 0, ir.samples.length);
    expect(peak).toBe(9600 + 700);
    expectClose(ir.samples[peak], -0.4, 0.01, '−0.5 times the 0.8 of the spectrum up to 20 kHz');
  });

  it.each([1 + 150e-6, 44_100 / 48_000])(
    'reads a capture on a clock of %d samples for one as it stands',
    (stretch) => {
      const spec = synchronisedSweep(20, 18_000, 2 ** 16, rate);
      const delay = 700.3;
      const echoed = place(sweepSignal(spec), 20_000, 140_000);
      // The capture's clock starts when it likes: between two samples of either.
      const from = -200.4;
      const length = Math.floor(130_000 * stretch);
      const heard = readBetween(echoed, from - delay, 1 / stretch, length, Math.min(1, stretch));
      const starts = (20_000 - from) * stretch;
      const ir = deconvolveSweep(heard, starts, spec, { ...options, stretch });
      expectClose(ir.sampleRate, rate * stretch, 1e-9);
      const direct = deconvolveSweep(echoed, 20_000, spec, options);
      const expected = readBetween(
        direct.samples,
        direct.zeroIndex - delay - ir.zeroIndex / stretch,
        1 / stretch,
        ir.samples.length,
        Math.min(1, stretch),
      ).map((value) => value / stretch);
      const [a, b] = [ir.samples, expected].map((one) => one.subarray(ir.zeroIndex - 500, 12_000));
      expectClose(a ?? [], b ?? [], 1e-3);
    },
  );

  it('keeps an arrival before zero delay before zero delay', () => {
    const ir = deconvolveSweep(place(played, 19_950, 140_000), 20_000, sweep, options);
    expect(indexOfPeak(ir.samples, 0, ir.samples.length)).toBe(9600 - 50);
  });

  it('recovers a decaying response inside the band', () => {
    const noise = gaussian(seededRandom(5));
    const room = Float64Array.from({ length: 24_000 }, (_, n) => noise() * Math.exp(-n / 3000));
    const captured = place(convolve(played, room), 20_000, 160_000);
    const ir = deconvolveSweep(captured, 20_000, sweep, {
      preSamples: 9600,
      lengthSamples: 60_000,
    });
    const read = powerSpectrum(ir, 1);
    const true_ = powerSpectrum({ samples: room, sampleRate: rate, zeroIndex: 0 }, read.hzPerBin);
    const errors: number[] = [];
    for (let hz = 30; hz < 18_000; hz *= 1.01) {
      const k = Math.round(hz / read.hzPerBin);
      errors.push(10 * Math.log10((read.power[k] ?? 0) / (true_.power[k] ?? 1)));
    }
    errors.sort((a, b) => Math.abs(a) - Math.abs(b));
    expectClose(errors[Math.floor(errors.length * 0.95)], 0, 0.01, 'dips of the room aside');
  });

  it('shows harmonic k at L·ln k before the linear response', () => {
    const captured = place(
      played.map((v) => v + 0.1 * v ** 2 + 0.1 * v ** 3),
      60_000,
      200_000,
    );
    const pre = 40_000;
    const ir = deconvolveSweep(captured, 60_000, sweep, { preSamples: pre, lengthSamples: 60_000 });
    for (const order of [2, 3]) {
      const lead = sweepRateSeconds(sweep) * Math.log(order) * rate;
      const peak = indexOfPeak(
        ir.samples,
        pre - Math.round(lead) - 500,
        pre - Math.round(lead) + 500,
      );
      expectClose(peak, pre - lead, 1.5);
    }
  });

  it('does not let a click at the ends of what is used wrap round into the response', () => {
    const used = options.lengthSamples + sweep.lengthSamples;
    const energy = (samples: Float64Array): number => samples.reduce((sum, v) => sum + v * v, 0);
    const response = (click: number): Float64Array =>
      deconvolveSweep(place(Float64Array.of(1), click, used), 9600, sweep, options).samples;
    const middle = energy(response(options.lengthSamples));
    expect(energy(response(0).subarray(4800))).toBeLessThan(1e-4 * middle);
    expect(energy(response(used - 1).subarray(0, 43_200))).toBeLessThan(1e-4 * middle);
  });

  it('makes no treble at its ends where it cuts through bass', () => {
    const bass = synchronisedSweep(10, 500, 2 ** 16, rate);
    const captured = place(sweepSignal(bass), 9600, 140_000);
    const short = { preSamples: 2400, lengthSamples: 7200 };
    const { power, hzPerBin } = powerSpectrum(deconvolveSweep(captured, 9600, bass, short), 1);
    const largest = (fromHz: number, toHz: number): number =>
      power.slice(fromHz / hzPerBin, toHz / hzPerBin).reduce((most, p) => Math.max(most, p), 0);
    expect(10 * Math.log10(largest(3000, 18_000) / largest(20, 400))).toBeLessThan(-85);
  });

  it('keeps a response that starts at its very first sample', () => {
    const all = { preSamples: 0, lengthSamples: 4800 };
    expectClose(deconvolveSweep(played, 0, sweep, all).samples[0], 0.8, 0.01, 'up to 20 kHz');
  });

  it('counts what lies outside the capture as silence', () => {
    const whole = deconvolveSweep(place(played, 9600, 140_000), 9600, sweep, options);
    const tight = deconvolveSweep(played, 0, sweep, options);
    expectClose(tight.samples, whole.samples, 1e-15);
  });

  it('gives the same numbers when the kept inverse is used again', () => {
    const captured = place(played, 0, 140_000);
    const once = deconvolveSweep(captured, 0, sweep, options);
    for (let k = 1; k <= 5; k++) {
      const other = synchronisedSweep(20 + k, 20_000, 4096, rate);
      deconvolveSweep(captured, 0, other, { preSamples: 0, lengthSamples: 4096 });
    }
    expect(deconvolveSweep(captured, 0, sweep, options).samples).toEqual(once.samples);
  });

  it.each([
    [0.5, options],
    [NaN, options],
    [0, { preSamples: -1, lengthSamples: 10 }],
    [0, { preSamples: 10, lengthSamples: 10 }],
    [0, { preSamples: 0, lengthSamples: 10.5 }],
  ])('refuses start %d with %o', (start, wrong) => {
    expect(() => deconvolveSweep(played, start, sweep, wrong)).toThrow(RangeError);
  });
});
