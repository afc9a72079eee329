import { describe, expect, it } from 'vitest';
import { stepResponse } from '../../../dsp/decay/step-response';
import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import { expectClose } from '../../close';

const sampleRate = 48_000;
const arrival = 24_000;
const pole = Math.exp(-1 / (0.001 * sampleRate));

/** A first-order low-pass of 1 ms, y[n] = (1 − p) x[n] + p y[n−1]. */
function lowPass(gain: number) {
  const samples = new Float64Array(65_536).map((_, n) => {
    return n < arrival ? 0 : gain * (1 - pole) * pole ** (n - arrival);
  });
  return { samples, sampleRate, zeroIndex: arrival };
}

/** Its step, 1 − p^(n+1). */
const closedForm = (seconds: Float64Array): Float64Array =>
  seconds.map((t) => Math.max(0, 1 - pole ** (Math.round(t * sampleRate) + 1)));

describe('stepResponse', () => {
  it('is a first-order low-pass’s 1 − e^(−t/τ), re its largest', () => {
    const { seconds, value } = stepResponse(lowPass(0.2), { arrivalSeconds: 0 });
    expectClose([seconds[0], seconds.at(-1)], [-0.001, 0.01], 1e-9);
    const step = closedForm(seconds);
    const largest = step.at(-1) ?? 1;
    expectClose(
      value,
      step.map((one) => one / largest),
      1e-12,
    );
  });

  it('keeps its sign', () => {
    const { value } = stepResponse(lowPass(-3));
    expectClose(value.at(-1), -1, 1e-12);
  });

  it('does not lean where the sweep began at 20 Hz', () => {
    const { samples } = lowPass(1);
    const spectrum = realSpectrum(samples, samples.length);
    for (let k = 0; k < spectrum.length / 2; k++) {
      const hz = (k * sampleRate) / samples.length;
      const rise = 0.5 * (1 - Math.cos(Math.PI * Math.min(Math.max((hz - 4) / 20, 0), 1)));
      spectrum[2 * k] = rise * (spectrum[2 * k] ?? 0);
      spectrum[2 * k + 1] = rise * (spectrum[2 * k + 1] ?? 0);
    }
    const cut = { samples: realSignal(spectrum, samples.length), sampleRate, zeroIndex: arrival };
    const { seconds, value } = stepResponse(cut, { arrivalSeconds: 0, afterSeconds: 0.005 });
    const step = closedForm(seconds);
    expectClose(
      value,
      step.map((one) => one / (step.at(-1) ?? 1)),
      0.015,
      'the ring bends a little',
    );
  });

  it('is 0 for silence', () => {
    const silent = { samples: new Float64Array(4800), sampleRate, zeroIndex: 2400 };
    const { value } = stepResponse(silent);
    expect(value.every((one) => one === 0)).toBe(true);
  });

  it('refuses spans and arrivals that are none', () => {
    expect(() => stepResponse(lowPass(1), { afterSeconds: 0 })).toThrow(RangeError);
    expect(() => stepResponse(lowPass(1), { beforeSeconds: NaN })).toThrow(RangeError);
    expect(() => stepResponse(lowPass(1), { arrivalSeconds: 5 })).toThrow(RangeError);
  });
});
