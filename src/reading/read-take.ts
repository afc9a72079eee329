import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { Clock } from '../../dsp/timing/clock';
import { findArrival } from '../../dsp/timing/find-arrival';
import { findNotNumber } from '../../dsp/timing/noise';
import type { Arrival } from '../../dsp/timing/arrival';
import { layoutFromName } from '../system/layout';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { checkCapture, type CaptureCheck } from './check-capture';
import { clockReading } from './clock-reading';
import { noiseResponse, segmentResponse } from './impulse-responses';
import { matchClock, type CapturedAudio } from './match-clock';
import { readChannel } from './read-channel';
import type { ChannelReading, Readings } from './reading';
import { readingStopped } from './reading-troubles';
import { arrivalFromMarks } from './reference-arrival';

export interface ReadTakeOptions {
  /** −40 to 60 °C; sets the speed of sound. */
  readonly temperatureCelsius: number;
  /** Tape distance of the reference speaker, 0.1 to 30 m. */
  readonly referenceDistanceMetres: number;
  /** Whether the capture comes from a simulated room. */
  readonly simulated: boolean;
  readonly signal?: AbortSignal;
  /** Called as each channel is read; progress 0 … 1. */
  readonly onChannel?: (reading: ChannelReading, progress: number) => void;
}

/**
 * Reads one take: clock, checks, then every channel in the order of the schedule. `capture` is
 * mono; it may start early or late, run on another clock and have another rate (44.1 kHz up).
 * A Trouble when it cannot be this take; what is wrong with single segments is marked in them.
 */
export async function readTake(
  schedule: Schedule,
  capture: { readonly samples: Float32Array; readonly sampleRate: number },
  options: ReadTakeOptions,
): Promise<Readings | Trouble> {
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) return layout;
  const audio: CapturedAudio = {
    samples: Float64Array.from(capture.samples),
    sampleRate: capture.sampleRate,
  };
  const bad = refuseCapture(audio, schedule);
  if (bad) return bad;
  const matched = matchClock(audio, schedule);
  if (isTrouble(matched)) return matched;
  const { clock } = matched;
  const checks = checkCapture(audio, clock, schedule);
  const reference = readReference(audio, clock, schedule, checks);
  const frame = {
    reference: reference.arrival,
    referenceDistanceMetres: options.referenceDistanceMetres,
    metresPerSecond: speedOfSound(options.temperatureCelsius),
  };
  const noises = new Map<string, ImpulseResponse | null>();
  const channels: ChannelReading[] = [];
  for (const [index, segment] of schedule.segments.entries()) {
    await breathe();
    if (options.signal?.aborted) return readingStopped;
    const channel = layout.channels.find((one) => one.label === segment.channel);
    const check = checks.segments[index];
    if (!channel || !check) continue;
    const key = JSON.stringify(segment.sweep);
    const known = noises.get(key);
    const noise =
      known === undefined ? noiseResponse(audio.samples, clock, schedule, segment) : known;
    noises.set(key, noise);
    const { faults, spoilt, mend } = check;
    const ir =
      index === reference.index && reference.ir
        ? reference.ir
        : segmentResponse(audio.samples, clock, schedule, segment, mend?.atSample);
    const mendedHz = mend?.sweepHz ?? null;
    const reading = readChannel({ channel, ir, noise, faults, spoilt, mendedHz }, frame);
    channels.push(reading);
    options.onChannel?.(reading, channels.length / schedule.segments.length);
  }
  return {
    format: 'leadline-readings',
    version: 1,
    layout: schedule.layout,
    takeId: schedule.id,
    reference: schedule.reference,
    referenceDistanceMetres: options.referenceDistanceMetres,
    absolute: false,
    temperatureCelsius: options.temperatureCelsius,
    simulated: options.simulated,
    clock: clockReading(clock, schedule),
    capture: {
      clipped: checks.clipped,
      noiseFloorDb: checks.noiseFloorDb,
      peakDb: checks.peakDb,
    },
    channels,
    notes: [],
    joined: [],
  };
}

/** Lets messages in between two channels, so that a stop is heard. */
function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

function refuseCapture({ samples, sampleRate }: CapturedAudio, schedule: Schedule): Trouble | null {
  const bad = findNotNumber(samples);
  if (bad >= 0) {
    return trouble(
      'not-a-number',
      `The capture is damaged: sample ${bad} (${(bad / sampleRate).toFixed(3)} s) is no number. Export the recording again.`,
    );
  }
  if (samples.every((value) => value === 0)) {
    return trouble(
      'silence',
      'The capture is silent from start to end. Check the microphone, its input and its level, then run the take again.',
    );
  }
  const seconds = samples.length / sampleRate;
  const first = schedule.segments[0]?.markStart ?? 0;
  const last = schedule.markStarts.at(-1) ?? 0;
  const needed = (last - first + schedule.mark.lengthSamples) / schedule.sampleRate;
  if (seconds >= needed * 0.999) return null;
  return trouble(
    'too-short',
    `The capture lasts ${seconds.toFixed(1)} s and is shorter than the take, which needs ${needed.toFixed(1)} s from its first mark to its last. Record until the take has ended.`,
  );
}

/** The reference speaker: its segment, its response unless that segment was damaged, its arrival. */
interface Reference {
  readonly index: number;
  readonly ir: ImpulseResponse | null;
  readonly arrival: Arrival | null;
}

/** Its arrival comes from its sweep, or from its marks when that segment is damaged. */
function readReference(
  { samples }: CapturedAudio,
  clock: Clock,
  schedule: Schedule,
  checks: CaptureCheck,
): Reference {
  const index = schedule.segments.findIndex((one) => one.channel === schedule.reference);
  const check = checks.segments[index];
  const whole = check?.spoilt === null && check.mend === null;
  const segment = schedule.segments[index];
  const ir = whole && segment ? segmentResponse(samples, clock, schedule, segment) : null;
  const arrival = ir && findArrival(ir);
  if (arrival && !arrival.bandAdapted) return { index, ir, arrival };
  return { index, ir, arrival: arrivalFromMarks(samples, clock, schedule) };
}
