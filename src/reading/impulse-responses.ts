import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { fadeEnds } from '../../dsp/signal/fade';
import type { SweepSpec } from '../../dsp/signal/sweep';
import { captureSample, type Clock } from '../../dsp/timing/clock';
import { repairSegment } from '../../dsp/timing/repair-segment';
import { resampleToStimulus } from '../../dsp/timing/resample';
import { bundleOf, intervalOf } from '../take/mark-intervals';
import type { Schedule, ScheduledSegment } from '../take/schedule';

/** Response before zero delay: room for nearer speakers than the reference, and for noise. */
const preSeconds = 0.17;
/** Response after zero delay. */
const postSeconds = 1.36;
/** With less of the silence than this, seconds, the noise is not known. */
const leastSilenceSeconds = 0.5;
/** Harmonics up to this of the sweep after must not stand in the response of the one before. */
const highestHarmonic = 5;
/** Where a response ends before its time, it fades over this. */
const endFadeSeconds = 0.01;

/**
 * Impulse response of a segment: its sweep on the stimulus clock, deconvolved. With `mendAt` (a
 * capture sample) the audio that its marks say was lost or repeated there is put right first. Of
 * overlapping sweeps the whole bundle is deconvolved, so that no neighbour is cut through, and the
 * response ends where the harmonics of the next one begin (Majdak, Balazs and Laback, JAES 55,
 * 2007); zeros follow.
 */
export function segmentResponse(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
  segment: ScheduledSegment,
  mendAt: number | null = null,
): ImpulseResponse {
  const interval = intervalOf(schedule, segment);
  const sweep = { ...segment.sweep, sampleRate: schedule.sampleRate };
  const { pre, whole } = lengths(schedule.sampleRate);
  const bundle = bundleOf(schedule, segment);
  const [first, last] = [bundle[0] ?? segment, bundle.at(-1) ?? segment];
  const start = first.sweepStart - pre;
  const length = last.end - start;
  const heard =
    mendAt === null
      ? resampleToStimulus(capture, clock, interval, start, length)
      : repairSegment(capture, clock, interval, mendAt, start, length).samples;
  const at = segment.sweepStart - start;
  if (bundle.length === 1) {
    return deconvolveSweep(heard, at, sweep, { preSamples: pre, lengthSamples: whole });
  }
  const long = deconvolveSweep(heard, at, sweep, {
    preSamples: at,
    lengthSamples: length - sweep.lengthSamples,
  });
  const cut = new Float64Array(whole);
  cut.set(long.samples.subarray(at - pre, at - pre + whole));
  const next = bundle.find(({ sweepStart }) => sweepStart > segment.sweepStart);
  if (next)
    endBefore(cut, pre + (next.sweepStart - segment.sweepStart) - harmonicLead(sweep), sweep);
  return { samples: cut, sampleRate: sweep.sampleRate, zeroIndex: pre };
}

/** How far the highest harmonic reaches before the linear response, L ln k in samples. */
function harmonicLead({ startHz, endHz, lengthSamples }: SweepSpec): number {
  return Math.ceil((lengthSamples / Math.log(endHz / startHz)) * Math.log(highestHarmonic));
}

/** Zeros from an entry on, after a short fade. */
function endBefore(samples: Float64Array, end: number, { sampleRate }: SweepSpec): void {
  if (end >= samples.length) return;
  const fade = Math.round(endFadeSeconds * sampleRate);
  fadeEnds(samples.subarray(0, end), 0, fade);
  samples.fill(0, end);
}

function lengths(sampleRate: number): { pre: number; whole: number } {
  const pre = Math.round(preSeconds * sampleRate);
  return { pre, whole: pre + Math.round(postSeconds * sampleRate) };
}

/**
 * The take's silence through the deconvolution of a segment, at the power the noise has in that
 * segment; null when the capture holds too little of it.
 */
export function noiseResponse(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
  segment: ScheduledSegment,
): ImpulseResponse | null {
  const { sampleRate } = schedule;
  const { pre, whole: lengthSamples } = lengths(sampleRate);
  const length = segment.end - segment.sweepStart + pre;
  const heard = readSilence(capture, clock, schedule, length);
  if (heard === null) return null;
  const whole = new Float64Array(length);
  for (let n = 0; n < length; n++) whole[n] = heard[n % heard.length] ?? 0;
  const sweep = { ...segment.sweep, sampleRate };
  return deconvolveSweep(whole, pre, sweep, { preSamples: pre, lengthSamples });
}

/**
 * The end of the take's silence on the stimulus clock, at most `length` samples; null when the
 * capture holds less than half a second of it.
 */
export function readSilence(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
  length: number,
): Float64Array | null {
  const { sampleRate, silence } = schedule;
  const end = silence.start + silence.length;
  const start = Math.max(silence.start, end - length);
  const held = Math.min(length, end - start, heldSilence(capture, clock, schedule, start, end));
  if (held < leastSilenceSeconds * sampleRate) return null;
  return resampleToStimulus(capture, clock, 0, end - held, held);
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
