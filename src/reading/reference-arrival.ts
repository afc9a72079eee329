import { addSpectrum, multiplySpectra } from '../../dsp/fft/convolve';
import { nextPowerOfTwo, realSignal, realSpectrum, type HalfSpectrum } from '../../dsp/fft/fft';
import { powerOf } from '../../dsp/response/whole-spectrum';
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
    addSpectrum(mean, spectrum);
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

function inverseOf(spectrum: HalfSpectrum): HalfSpectrum {
  const power = powerOf(spectrum);
  const inverse = new Float64Array(spectrum.length);
  let most = 0;
  for (let k = 0; k < power.length; k++) most = Math.max(most, power[k] ?? 0);
  for (let k = 0; k < power.length; k++) {
    const scale = 1 / ((power[k] ?? 0) + 1e-2 * most);
    inverse[2 * k] = scale * (spectrum[2 * k] ?? 0);
    inverse[2 * k + 1] = -scale * (spectrum[2 * k + 1] ?? 0);
  }
  return inverse;
}
