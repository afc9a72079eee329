import { captureSample, type Clock } from '../../dsp/timing/clock';
import { resampleToStimulus } from '../../dsp/timing/resample';
import type { Schedule } from '../take/schedule';
import type { Samples } from '../../dsp/signal/samples';

/** With less of the silence than this, seconds, the noise is not known. */
const leastSilenceSeconds = 0.5;

/**
 * The take's silence, as much as the capture holds of it, by the capture's own clock (`asHeard`, a
 * view) or on the stimulus clock; null when that is less than half a second.
 */
export function readSilence(
  capture: Samples,
  clock: Clock,
  schedule: Schedule,
  asHeard: boolean,
): Float64Array | null {
  const { sampleRate, silence } = schedule;
  const end = silence.start + silence.length;
  const held = heldSilence(capture, clock, schedule, silence.start, end);
  if (held < leastSilenceSeconds * sampleRate) return null;
  if (asHeard) {
    const from = Math.ceil(captureSample(clock, 0, end - held));
    return new Float64Array(capture.subarray(from, from + Math.floor(held * clock.ratio)));
  }
  return resampleToStimulus(capture, clock, 0, end - held, held);
}

/** Stimulus samples of the silence's end that the capture really holds. */
function heldSilence(
  capture: Samples,
  clock: Clock,
  schedule: Schedule,
  start: number,
  end: number,
): number {
  const first = captureSample(clock, 0, start);
  const missing = Math.max(0, -first) / clock.ratio;
  const beyond = Math.max(0, captureSample(clock, 0, end) - capture.length) / clock.ratio;
  return Math.floor(end - start - missing - beyond) - Math.round(0.02 * schedule.sampleRate);
}
