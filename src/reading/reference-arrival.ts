import { multiplySpectra } from '../../dsp/fft/convolve';
import { nextPowerOfTwo, realSignal, realSpectrum } from '../../dsp/fft/fft';
import { advance } from '../../dsp/fft/advance';
import { markSignal } from '../../dsp/signal/mark';
import { copyFinite } from '../../dsp/timing/baseband';
import { captureSample, type Clock } from '../../dsp/timing/clock';
import { findArrival } from '../../dsp/timing/find-arrival';
import type { Arrival } from '../../dsp/timing/arrival';
import type { Schedule } from '../take/schedule';
import type { Samples } from '../../dsp/signal/samples';

const beforeSeconds = 0.1;
const afterSeconds = 0.25;

/**
 * Arrival of the reference speaker from the take's marks alone, for when its own sweep was spoilt.
 * The marks' mean is divided by the chirp, H = Y X* / (|X|² + 10⁻² max|X|²), and read in the
 * chirp's band. Same zero as the impulse responses of the sweeps. Null when it cannot be told.
 */
export function arrivalFromMarks(
  capture: Samples,
  clock: Clock,
  schedule: Schedule,
): Arrival | null {
  const { mark } = schedule;
  // Of the capture's own clock; within a mark's length its skew moves nothing.
  const sampleRate = schedule.sampleRate * clock.ratio;
  const pre = Math.round(beforeSeconds * sampleRate);
  const length = pre + Math.round(afterSeconds * sampleRate);
  const size = nextPowerOfTwo(length + Math.ceil(mark.lengthSamples * clock.ratio));
  const heard = new Float64Array(length);
  const spectrum = new Float64Array(size + 2);
  const mean = new Float64Array(size + 2);
  for (const [index, { standing }] of clock.segments.entries()) {
    if (standing !== 'marked') continue;
    const start = captureSample(clock, index, schedule.markStarts[index] ?? 0);
    copyFinite(capture, Math.floor(start) - pre, heard);
    advance(realSpectrum(heard, size, spectrum), start - Math.floor(start), size);
    for (let n = 0; n < mean.length; n++) mean[n] = (mean[n] ?? 0) + (spectrum[n] ?? 0);
  }
  const chirp = markSignal({ ...mark, ...markAt(mark, clock.ratio), sampleRate });
  multiplySpectra(mean, inverseOf(realSpectrum(chirp, size)));
  const samples = realSignal(mean, size).slice(0, length);
  const band = { lowHz: 1.3 * mark.startHz, highHz: 0.95 * mark.endHz };
  return findArrival({ samples, sampleRate, zeroIndex: pre }, band);
}

/** The mark's lengths as a clock counts them that has `ratio` samples for one of the stimulus's. */
function markAt({ lengthSamples, fadeSamples }: Schedule['mark'], ratio: number) {
  return {
    lengthSamples: Math.round(lengthSamples * ratio),
    fadeSamples: Math.round(fadeSamples * ratio),
  };
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
