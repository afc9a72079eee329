import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { Clock } from '../../dsp/timing/clock';
import { bundleOf } from '../take/mark-intervals';
import type { Schedule, ScheduledSegment } from '../take/schedule';
import { readSilence } from './read-silence';
import type { Samples } from '../../dsp/signal/samples';

/** What all responders of one take have in common; filled as it is first asked for. */
export interface SharedSound {
  readonly silences: { asHeard?: Float64Array | null; onStimulus?: Float64Array | null };
  readonly noises: Map<string, ImpulseResponse | null>;
  /** The bundles of overlapping sweeps last asked for: their speakers are read one by one. */
  readonly bundles: Map<string, BundleResponse>;
}

/** The responses of a bundle's sweeps of one kind, one after the other in one response. */
export interface BundleResponse {
  readonly heard: Float64Array;
  /** Stimulus sample at which `heard` starts. */
  readonly start: number;
  /** Zero delay of a sweep that starts at `start`. */
  readonly long: ImpulseResponse;
}

export function newSharedSound(): SharedSound {
  return { silences: {}, noises: new Map(), bundles: new Map() };
}

/** What responders share, read from a whole capture for those that hold a piece of it only. */
export function fillSharedSound(capture: Samples, take: SoundOfTake): SharedSound {
  const { clock, schedule, checks, shared } = take;
  const ground = { capture, clock, schedule, silences: shared.silences };
  const resampled = schedule.segments.some(
    (segment, index) => (checks[index]?.mend ?? null) !== null || !isReadAsHeard(take, segment),
  );
  return {
    silences: {
      asHeard: silenceOf(ground, true),
      onStimulus: resampled ? silenceOf(ground, false) : null,
    },
    noises: shared.noises,
    bundles: new Map(),
  };
}

interface SoundOfTake {
  readonly clock: Clock;
  readonly schedule: Schedule;
  readonly checks: readonly { readonly mend: unknown }[];
  readonly shared: SharedSound;
}

/** Whether an unmended segment needs no resampling. */
export function isReadAsHeard(
  { clock, schedule }: Pick<SoundOfTake, 'clock' | 'schedule'>,
  segment: ScheduledSegment,
): boolean {
  return bundleOf(schedule, segment).length === 1 && runsAlike(clock, segment);
}

/** What a responder works on. */
export interface ResponderGround {
  readonly capture: Samples;
  readonly clock: Clock;
  readonly schedule: Schedule;
  readonly silences: SharedSound['silences'];
}

/** Whether the capture's rate is near enough the stimulus's, and holds the whole sweep. */
function runsAlike({ ratio, stimulusRate }: Clock, { sweep }: ScheduledSegment): boolean {
  return ratio > 0.91 && ratio < 1.09 && 2 * sweep.endHz < ratio * stimulusRate;
}

/** The take's silence by one clock or the other; null when the capture holds too little of it. */
export function silenceOf(
  { capture, clock, schedule, silences }: ResponderGround,
  asHeard: boolean,
) {
  const which = asHeard ? 'asHeard' : 'onStimulus';
  const known = silences[which];
  if (known !== undefined) return known;
  return (silences[which] = readSilence(capture, clock, schedule, asHeard));
}
