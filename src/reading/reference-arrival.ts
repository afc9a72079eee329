import { multiplySpectra } from '../../dsp/fft/convolve';
import { nextPowerOfTwo, realSignal, realSpectrum } from '../../dsp/fft/fft';
import { markSignal } from '../../dsp/signal/mark';
import type { Clock } from '../../dsp/timing/clock';
import { findArrival } from '../../dsp/timing/find-arrival';
import { resampleToStimulus } from '../../dsp/timing/resample';
import type { Arrival } from '../../dsp/timing/arrival';
import type { Schedule } from '../take/schedule';

const beforeSeconds = 0.1;
const afterSeconds = 0.25;

/**
 * Arrival of the reference speaker from the take's marks alone, for when its own sweep was spoilt.
 * The marks' mean is divided by the chirp, H = Y X* / (|X|² + 10⁻² max|X|²), and read in the
 * chirp's band. Same zero as the impulse responses of the sweeps. Null when it cannot be told.
 */
export function arrivalFromMarks(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
): Arrival | null {
  const { sampleRate, mark } = schedule;
  const pre = Math.round(beforeSeconds * sampleRate);
  const length = pre + Math.round(afterSeconds * sampleRate);
  const mean = new Float64Array(length);
  for (const [index, { standing }] of clock.segments.entries()) {
    if (standing !== 'marked') continue;
    const start = (schedule.markStarts[index] ?? 0) - pre;
    const heard = resampleToStimulus(capture, clock, index, start, length);
    for (let n = 0; n < length; n++) mean[n] = (mean[n] ?? 0) + (heard[n] ?? 0);
  }
  const size = nextPowerOfTwo(2 * length);
  const spectrum = realSpectrum(mean, size);
  multiplySpectra(spectrum, inverseOf(realSpectrum(markSignal({ ...mark, sampleRate }), size)));
  const samples = realSignal(spectrum, size).slice(0, length);
  const band = { lowHz: 1.3 * mark.startHz, highHz: 0.95 * mark.endHz };
  return findArrival({ samples, sampleRate, zeroIndex: pre }, band);
}

function inverseOf(spectrum: Float64Array): Float64Array {
  const power = new Float64Array(spectrum.length / 2);
  for (let k = 0; k < power.length; k++) {
    power[k] = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
  }
  const floor = 1e-2 * power.reduce((most, one) => Math.max(most, one), 0);
  return spectrum.map((part, at) => {
    const scale = 1 / ((power[at >> 1] ?? 0) + floor);
    return at % 2 === 0 ? part * scale : -part * scale;
  });
}
