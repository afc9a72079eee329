import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { OtherSweep } from '../../dsp/disturbance/disturbance';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { fadeEnds } from '../../dsp/signal/fade';
import { sweepRateSeconds, type SweepSpec } from '../../dsp/signal/sweep';
import type { Clock } from '../../dsp/timing/clock';
import { repairSegment } from '../../dsp/timing/repair-segment';
import { resampleToStimulus } from '../../dsp/timing/resample';
import { bundleOf, intervalOf } from '../take/mark-intervals';
import type { Schedule, ScheduledSegment } from '../take/schedule';
import { readSilence } from './read-silence';

/** Response before zero delay: room for nearer speakers than the reference, and for noise. */
const preSeconds = 0.17;
/** Response after zero delay. */
const postSeconds = 1.36;
/** Harmonics up to this of the sweep after must not stand in the response of the one before. */
const highestHarmonic = 5;
/** Where a response ends before its time, it fades over this. */
const endFadeSeconds = 0.01;

/** What was heard of one segment. */
export interface SegmentResponse {
  readonly ir: ImpulseResponse;
  /** On the stimulus clock; of overlapping sweeps the whole bundle. */
  readonly heard: Float64Array;
  /** Index in `heard` where the sweep starts. */
  readonly sweepAt: number;
  /** The other sweeps that sound in `heard`. */
  others(): readonly OtherSweep[];
}

export interface Responder {
  /**
   * Impulse response of a segment. With `mendAt` (a capture sample) the audio that its marks say
   * was lost or repeated there is put right first.
   */
  respond(segment: ScheduledSegment, mendAt?: number): SegmentResponse;
  /**
   * The take's silence through the deconvolution of a segment, at the power the noise has in it;
   * null when the capture holds too little of it. The same object for the same sweep.
   */
  noise(segment: ScheduledSegment): ImpulseResponse | null;
  /** The take's silence on the stimulus clock; null when the capture holds too little of it. */
  readonly silence: Float64Array | null;
}

/**
 * Turns segments of a capture into impulse responses: each segment's sweep on the stimulus clock,
 * deconvolved. Overlapping sweeps of one kind are deconvolved together, so that no neighbour is cut
 * through, and a response ends where the harmonics of the next sweep begin (Majdak, Balazs and
 * Laback, JAES 55, 2007); zeros follow.
 */
export function createResponder(
  capture: Float64Array,
  clock: Clock,
  schedule: Schedule,
): Responder {
  const ground = { capture, clock, schedule };
  const silence = readSilence(capture, clock, schedule);
  const noises = new Map<string, ImpulseResponse | null>();
  const bundles = new Map<string, BundleResponse>();
  const mostBundles = Math.max(...schedule.channels.map((one) => countOf(schedule, one)));
  return {
    respond(segment, mendAt) {
      const bundle = bundleOf(schedule, segment);
      if (bundle.length === 1) return respondAlone(ground, segment, mendAt ?? null);
      const key = `${segment.markStart} ${JSON.stringify(segment.sweep)}`;
      const known = bundles.get(key) ?? respondTogether(ground, bundle, segment);
      bundles.delete(key);
      bundles.set(key, known);
      for (const oldest of bundles.keys()) {
        if (bundles.size <= mostBundles) break;
        bundles.delete(oldest);
      }
      return responseIn(known, bundle, segment, schedule.sampleRate);
    },
    noise(segment) {
      const key = JSON.stringify(segment.sweep);
      const known = noises.get(key);
      const noise =
        known === undefined ? noiseResponse(silence, segment, schedule.sampleRate) : known;
      noises.set(key, noise);
      return noise;
    },
    silence,
  };
}

interface Ground {
  readonly capture: Float64Array;
  readonly clock: Clock;
  readonly schedule: Schedule;
}

/** The responses of a bundle's sweeps of one kind, one after the other in one response. */
interface BundleResponse {
  readonly heard: Float64Array;
  /** Stimulus sample at which `heard` starts. */
  readonly start: number;
  /** Zero delay of a sweep that starts at `start`. */
  readonly long: ImpulseResponse;
}

function respondAlone(
  { capture, clock, schedule }: Ground,
  segment: ScheduledSegment,
  mendAt: number | null,
): SegmentResponse {
  const { pre, whole } = lengths(schedule.sampleRate);
  const interval = intervalOf(schedule, segment);
  const start = segment.sweepStart - pre;
  const length = segment.end - start;
  const heard =
    mendAt === null
      ? resampleToStimulus(capture, clock, interval, start, length)
      : repairSegment(capture, clock, interval, mendAt, start, length).samples;
  const sweep = { ...segment.sweep, sampleRate: schedule.sampleRate };
  const ir = deconvolveSweep(heard, pre, sweep, { preSamples: pre, lengthSamples: whole });
  return { ir, heard, sweepAt: pre, others: () => [] };
}

function respondTogether(
  { capture, clock, schedule }: Ground,
  bundle: readonly ScheduledSegment[],
  segment: ScheduledSegment,
): BundleResponse {
  const { pre } = lengths(schedule.sampleRate);
  const start = (bundle[0] ?? segment).sweepStart - pre;
  const length = (bundle.at(-1) ?? segment).end - start;
  const heard = resampleToStimulus(capture, clock, intervalOf(schedule, segment), start, length);
  const sweep = { ...segment.sweep, sampleRate: schedule.sampleRate };
  const long = deconvolveSweep(heard, pre, sweep, {
    preSamples: pre,
    lengthSamples: length - sweep.lengthSamples,
  });
  return { heard, start, long };
}

function responseIn(
  response: BundleResponse,
  bundle: readonly ScheduledSegment[],
  segment: ScheduledSegment,
  sampleRate: number,
): SegmentResponse {
  const place = (one: ScheduledSegment) => ({
    sweepAt: one.sweepStart - response.start,
    ir: cutOut(response, bundle, one, sampleRate),
  });
  const others = bundle.filter((one) => one !== segment);
  return {
    ...place(segment),
    heard: response.heard,
    others: () => others.map((one) => ({ ...place(one), sweep: { ...one.sweep, sampleRate } })),
  };
}

function cutOut(
  { start, long }: BundleResponse,
  bundle: readonly ScheduledSegment[],
  segment: ScheduledSegment,
  sampleRate: number,
): ImpulseResponse {
  const { pre, whole } = lengths(sampleRate);
  const samples = new Float64Array(whole);
  const from = segment.sweepStart - start - pre;
  samples.set(long.samples.subarray(from, from + whole));
  const next = bundle.find(({ sweepStart }) => sweepStart > segment.sweepStart);
  if (next) {
    const lead = harmonicLead({ ...next.sweep, sampleRate });
    endBefore(samples, pre + next.sweepStart - segment.sweepStart - lead, sampleRate);
  }
  return { samples, sampleRate, zeroIndex: pre };
}

/** How far the highest harmonic reaches before the linear response, L ln k in samples. */
function harmonicLead(sweep: SweepSpec): number {
  return Math.ceil(sweepRateSeconds(sweep) * sweep.sampleRate * Math.log(highestHarmonic));
}

/** Zeros from an entry on, after a short fade. */
function endBefore(samples: Float64Array, end: number, sampleRate: number): void {
  if (end >= samples.length) return;
  fadeEnds(samples.subarray(0, end), 0, Math.round(endFadeSeconds * sampleRate));
  samples.fill(0, end);
}

function noiseResponse(
  silence: Float64Array | null,
  segment: ScheduledSegment,
  sampleRate: number,
): ImpulseResponse | null {
  if (silence === null) return null;
  const { pre, whole } = lengths(sampleRate);
  const length = segment.end - segment.sweepStart + pre;
  const end = silence.subarray(Math.max(0, silence.length - length));
  const heard = new Float64Array(length);
  for (let n = 0; n < length; n++) heard[n] = end[n % end.length] ?? 0;
  const sweep = { ...segment.sweep, sampleRate };
  return deconvolveSweep(heard, pre, sweep, { preSamples: pre, lengthSamples: whole });
}

function lengths(sampleRate: number): { pre: number; whole: number } {
  const pre = Math.round(preSeconds * sampleRate);
  return { pre, whole: pre + Math.round(postSeconds * sampleRate) };
}

function countOf({ segments }: Schedule, label: string): number {
  return segments.filter(({ channel }) => channel === label).length;
}
