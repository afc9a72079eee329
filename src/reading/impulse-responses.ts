import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { captureSample, type Clock } from '../../dsp/timing/clock';
import { repairSegment } from '../../dsp/timing/repair-segment';
import { resampleToStimulus } from '../../dsp/timing/resample';
import type { Schedule, ScheduledSegment } from '../take/schedule';

/** Response before zero delay: room for nearer speakers than the reference, and for noise. */
const preSeconds = 0.17;
/** Response after zero delay. */
const postSeconds = 1.36;
/** With less of the silence than this, seconds, the noise is not known. */
const leastSilenceSeconds = 0.5;

/**
 * Impulse response of segment `index`: its sweep on the stimulus clock, deconvolved. With `mendAt`
 * (a capture sample) the audio that its marks say was lost or repeated there is put right first.
 */
export function segmentResponse(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
  index: number,
  mendAt: number | null = null,
): ImpulseResponse {
  const segment = segmentAt(schedule, index);
  const pre = Math.round(preSeconds * schedule.sampleRate);
  const length = segment.end - segment.sweepStart + pre;
  const start = segment.sweepStart - pre;
  const heard =
    mendAt === null
      ? resampleToStimulus(capture, clock, index, start, length)
      : repairSegment(capture, clock, index, mendAt, start, length).samples;
  return respond(heard, schedule, segment);
}

/** The same for a stretch already on the stimulus clock, its sweep starting after the pre-time. */
function respond(
  heard: Float64Array,
  schedule: Schedule,
  { sweep }: ScheduledSegment,
): ImpulseResponse {
  const { sampleRate } = schedule;
  const pre = Math.round(preSeconds * sampleRate);
  return deconvolveSweep(
    heard,
    pre,
    { ...sweep, sampleRate },
    {
      preSamples: pre,
      lengthSamples: pre + Math.round(postSeconds * sampleRate),
    },
  );
}

/**
 * The take's silence through the deconvolution of segment `index`, at the power the noise has in
 * that segment; null when the capture holds too little of it.
 */
export function noiseResponse(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
  index: number,
): ImpulseResponse | null {
  const { sampleRate, silence } = schedule;
  const segment = segmentAt(schedule, index);
  const pre = Math.round(preSeconds * sampleRate);
  const length = segment.end - segment.sweepStart + pre;
  const end = silence.start + silence.length;
  const start = Math.max(silence.start, end - length);
  const held = Math.min(length, end - start, heldSilence(capture, clock, schedule, start, end));
  if (held < leastSilenceSeconds * sampleRate) return null;
  const whole = new Float64Array(length);
  const heard = resampleToStimulus(capture, clock, 0, end - held, held);
  for (let n = 0; n < length; n++) whole[n] = heard[n % held] ?? 0;
  return respond(whole, schedule, segment);
}

/** Stimulus samples of the silence's end that the capture really holds. */
function heldSilence(
  capture: Float64Array,
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

function segmentAt(schedule: Schedule, index: number): ScheduledSegment {
  const segment = schedule.segments[index];
  if (!segment) {
    throw new RangeError(`segment must lie in 0 … ${schedule.segments.length - 1}, got ${index}`);
  }
  return segment;
}
