import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { OtherSweep } from '../../dsp/disturbance/disturbance';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { fadeEnds } from '../../dsp/signal/fade';
import { scratch } from '../../dsp/signal/scratch';
import { stretchOf } from '../../dsp/signal/stretch-of';
import { sweepRateSeconds, type SweepSpec } from '../../dsp/signal/sweep';
import { captureSample, type Clock } from '../../dsp/timing/clock';
import { repairSegment } from '../../dsp/timing/repair-segment';
import { resampleToStimulus } from '../../dsp/timing/resample';
import { bundleOf, intervalOf } from '../take/mark-intervals';
import type { Schedule, ScheduledSegment } from '../take/schedule';
import { noiseResponse } from './noise-response';
import { heardBefore, respondWithHarmonics } from './respond-with-harmonics';
import { responseLengths } from './response-lengths';
import {
  isReadAsHeard,
  newSharedSound,
  silenceOf,
  type BundleResponse,
  type ResponderGround,
  type SharedSound,
} from './shared-sound';
import type { Samples } from '../../dsp/signal/samples';

/** Harmonics up to this of the sweep after must not stand in the response of the one before. */
const highestHarmonic = 5;
/** Where a response ends before its time, it fades over this. */
const endFadeSeconds = 0.01;
const room = scratch();

/** What was heard of one segment, at the rate of `ir`: by the capture's clock or by the stimulus's. */
export interface SegmentResponse {
  readonly ir: ImpulseResponse;
  /** The same from before its harmonics on; null where they cannot be read. */
  readonly long: ImpulseResponse | null;
  /** Of overlapping sweeps the whole bundle; until the next segment is responded to. */
  readonly heard: Float64Array;
  /** Index in `heard` where the sweep starts, whole. */
  readonly sweepAt: number;
  /** The sweep as that clock counts it. */
  readonly sweep: SweepSpec;
  /** The take's silence by the same clock; null when the capture holds too little of it. */
  readonly silence: Float64Array | null;
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
   * The take's silence through the deconvolution of a segment, at the power the noise has in it and
   * at the rate of its response; null when the capture holds too little of it. The same object for
   * the same sweep.
   */
  noise(segment: ScheduledSegment, mended?: boolean): ImpulseResponse | null;
}

/**
 * Turns segments of a capture into impulse responses. A sweep that stands alone is divided by the
 * sweep as the capture's clock counts it, so that nothing is resampled; what is mended, overlaps
 * or was captured at quite another rate is put on the stimulus clock first. Overlapping sweeps of
 * one kind are deconvolved together, so that no neighbour is cut through, and a response ends where
 * the harmonics of the next sweep begin (Majdak, Balazs and Laback, JAES 55, 2007); zeros follow.
 */
export function createResponder(
  capture: Samples,
  clock: Clock,
  schedule: Schedule,
  shared: SharedSound = newSharedSound(),
): Responder {
  const ground: ResponderGround = { capture, clock, schedule, silences: shared.silences };
  const { noises, bundles } = shared;
  const mostBundles = Math.max(...schedule.channels.map((one) => countOf(schedule, one)));
  return {
    respond(segment, mendAt) {
      if (mendAt === undefined && isReadAsHeard(ground, segment)) {
        return respondAsHeard(ground, segment);
      }
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
      return responseIn(ground, known, bundle, segment);
    },
    noise(segment, mended = false) {
      const asHeard = !mended && isReadAsHeard(ground, segment);
      const sweep = JSON.stringify(segment.sweep);
      const key = `${sweep} ${asHeard}`;
      const known = noises.get(key);
      // By the first segment with that sweep, whichever is read first.
      const first = schedule.segments.find((one) => JSON.stringify(one.sweep) === sweep);
      const noise = known === undefined ? noiseResponse(ground, first ?? segment, asHeard) : known;
      noises.set(key, noise);
      return noise;
    },
  };
}

/** The sweep as a clock counts it that has `ratio` samples for one of the stimulus's. */
function sweepAsHeard({ sweep }: ScheduledSegment, sampleRate: number, ratio: number): SweepSpec {
  return {
    ...sweep,
    lengthSamples: Math.round(sweep.lengthSamples * ratio),
    fadeInSamples: Math.round(sweep.fadeInSamples * ratio),
    fadeOutSamples: Math.round(sweep.fadeOutSamples * ratio),
    sampleRate: sampleRate * ratio,
  };
}

function respondAsHeard(ground: ResponderGround, segment: ScheduledSegment): SegmentResponse {
  const { capture, clock, schedule } = ground;
  const { sampleRate } = schedule;
  const { ratio } = clock;
  const { pre } = responseLengths(sampleRate * ratio);
  const start = captureSample(clock, intervalOf(schedule, segment), segment.sweepStart);
  const sweep = { ...segment.sweep, sampleRate };
  const before = heardBefore(sweep, sampleRate * ratio);
  const length = before + Math.ceil((segment.end - segment.sweepStart) * ratio);
  const heard = stretchOf(capture, Math.floor(start) - before, length, room);
  const at = before + start - Math.floor(start);
  return {
    ...respondWithHarmonics(heard, at, sweep, ratio),
    heard: heard.subarray(before - pre),
    sweepAt: pre,
    sweep: sweepAsHeard(segment, sampleRate, ratio),
    silence: silenceOf(ground, true),
    others: () => [],
  };
}

function respondAlone(
  ground: ResponderGround,
  segment: ScheduledSegment,
  mendAt: number | null,
): SegmentResponse {
  const { capture, clock, schedule } = ground;
  const { pre } = responseLengths(schedule.sampleRate);
  const interval = intervalOf(schedule, segment);
  const sweep = { ...segment.sweep, sampleRate: schedule.sampleRate };
  const before = heardBefore(sweep, schedule.sampleRate);
  const start = segment.sweepStart - before;
  const length = segment.end - start;
  const heard =
    mendAt === null
      ? resampleToStimulus(capture, clock, interval, start, length)
      : repairSegment(capture, clock, interval, mendAt, start, length).samples;
  const { ir, long } = respondWithHarmonics(heard, before, sweep);
  return {
    ir,
    // A joint in the sweep sounds like distortion.
    long: mendAt === null ? long : null,
    heard: heard.subarray(before - pre),
    sweepAt: pre,
    sweep,
    silence: silenceOf(ground, false),
    others: () => [],
  };
}

function respondTogether(
  { capture, clock, schedule }: ResponderGround,
  bundle: readonly ScheduledSegment[],
  segment: ScheduledSegment,
): BundleResponse {
  const { pre } = responseLengths(schedule.sampleRate);
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
  ground: ResponderGround,
  response: BundleResponse,
  bundle: readonly ScheduledSegment[],
  segment: ScheduledSegment,
): SegmentResponse {
  const { sampleRate } = ground.schedule;
  const place = (one: ScheduledSegment) => ({
    sweepAt: one.sweepStart - response.start,
    ir: cutOut(response, bundle, one, sampleRate),
  });
  const others = bundle.filter((one) => one !== segment);
  return {
    ...place(segment),
    // The one before is still heard where the harmonics are.
    long: null,
    heard: response.heard,
    sweep: { ...segment.sweep, sampleRate },
    silence: silenceOf(ground, false),
    others: () => others.map((one) => ({ ...place(one), sweep: { ...one.sweep, sampleRate } })),
  };
}

function cutOut(
  { start, long }: BundleResponse,
  bundle: readonly ScheduledSegment[],
  segment: ScheduledSegment,
  sampleRate: number,
): ImpulseResponse {
  const { pre, whole } = responseLengths(sampleRate);
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

function countOf({ segments }: Schedule, label: string): number {
  return segments.filter(({ channel }) => channel === label).length;
}
