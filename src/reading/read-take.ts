import { speedOfSound } from '../../dsp/level/speed-of-sound';
import { findArrival } from '../../dsp/timing/find-arrival';
import { findNotNumber } from '../../dsp/timing/noise';
import { markGains } from '../../dsp/timing/mark-gains';
import type { Arrival } from '../../dsp/timing/arrival';
import type { MicrophoneCalibration } from '../microphone/calibration';
import { layoutFromName } from '../system/layout';
import type { SettingsInForce } from '../system/declared-settings';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { checkCapture } from './check-capture';
import { checkGains } from './check-gains';
import { clockReading } from './clock-reading';
import type { GatheredSweeps } from './gather-sweeps';
import { readNoiseFloor } from './noise-floor';
import { newSharedSound } from './shared-sound';
import type { CapturedAudio } from './match-clock';
import { gatherChannel, type FramedTake } from './read-one';
import { readTogether, type ReadingHelper } from './read-together';
import type { ChannelReading, Readings } from './reading';
import { frameTake } from './reading-frame';
import { readingStopped } from './reading-troubles';
import { arrivalFromMarks } from './reference-arrival';
import { takeClock } from './take-clock';
import { takeOutDelay } from './take-out-delay';
import { channelsInForce, takeOutNotes, untouched } from './take-out-settings';

export interface ReadTakeOptions {
  /** −40 to 60 °C; sets the speed of sound. */
  readonly temperatureCelsius: number;
  /** Tape distance of the reference speaker, 0.1 to 30 m. */
  readonly referenceDistanceMetres: number;
  /** Whether the capture comes from a simulated room. */
  readonly simulated: boolean;
  /** Response of the microphone, taken out of every response; null or left out: none known. */
  readonly calibration?: MicrophoneCalibration | null;
  /** What the processor had in force, taken out again; null or left out: there is no processor. */
  readonly inForce?: SettingsInForce | null;
  readonly signal?: AbortSignal;
  /** Whoever reads channels beside this thread; left out or empty: it reads them all. */
  readonly helpers?: readonly ReadingHelper[];
  /** Called as each channel is read, in any order where there are helpers; progress 0 … 1. */
  readonly onChannel?: (reading: ChannelReading, progress: number) => void;
}

/** Microphone audio of a take, mono, and on the same frames the electrical loopback if there is one. */
export interface TakeCapture {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly loopback?: Float32Array | null;
}

/**
 * Reads one take: clock, checks, then every channel in the order of the schedule. The capture may
 * start early or late, run on another clock and have another rate (44.1 kHz up). With a loopback
 * the clock is the loopback's and time is absolute. A Trouble when it cannot be this take; what is
 * wrong with single segments is marked in them.
 */
export async function readTake(
  schedule: Schedule,
  capture: TakeCapture,
  options: ReadTakeOptions,
): Promise<Readings | Trouble> {
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) return layout;
  const audio = audioOf(capture.samples, capture.sampleRate);
  const bad = refuseCapture(audio, schedule);
  if (bad) return bad;
  const timed = takeClock(audio, loopbackOf(capture), schedule);
  if (isTrouble(timed)) return timed;
  const { clock } = timed;
  const checks = checkCapture(audio, clock, schedule);
  const mark = { ...schedule.mark, sampleRate: schedule.sampleRate };
  const gains = timed.heard ? markGains(audio.samples, timed.heard, mark) : [];
  const segmentChecks = checkGains(checks.segments, gains, schedule);
  const calibration = options.calibration ?? null;
  const shared = newSharedSound();
  const ground = { schedule, clock, checks: segmentChecks, calibration, shared };
  const whole = { samples: audio.samples, start: 0 };
  const byMarks = arrivalFromMarks(audio.samples, clock, schedule);
  const gathered = gatherChannel(ground, schedule.reference, whole);
  const reference = holdAgainstMarks(gathered, byMarks);
  const settings = options.inForce ?? null;
  const inForce = settings && channelsInForce(layout, schedule.reference, settings);
  const own = inForce?.get(schedule.reference) ?? untouched;
  const found = referenceArrival(reference) ?? byMarks;
  const { frame, notes } = frameTake(
    schedule.reference,
    found && own.delay ? takeOutDelay(found, own.delay) : found,
    timed.departure,
    options.referenceDistanceMetres,
    speedOfSound(options.temperatureCelsius),
  );
  const take: FramedTake = { ...ground, channels: layout.channels, frame, inForce };
  const channels = await readTogether(take, whole.samples, reference, options);
  if (!channels) return readingStopped;
  return {
    format: 'leadline-readings',
    version: 1,
    layout: schedule.layout,
    takeId: schedule.id,
    reference: schedule.reference,
    referenceDistanceMetres: frame.referenceDistanceMetres,
    absolute: frame.departure !== null,
    temperatureCelsius: options.temperatureCelsius,
    simulated: options.simulated,
    clock: clockReading(clock, schedule),
    capture: {
      clipped: checks.clipped,
      noiseFloorDb: checks.noiseFloorDb,
      noise: readNoiseFloor(audio.samples, audio.sampleRate, ground, calibration),
      peakDb: checks.peakDb,
    },
    channels,
    notes: [
      ...timed.notes,
      ...notes,
      ...calibrationNotes(calibration),
      ...takeOutNotes(layout, settings),
      ...shortSweepNotes(schedule),
    ],
    joined: [],
    ...(settings ? { inForce: settings } : {}),
  };
}

function audioOf(samples: Float32Array, sampleRate: number): CapturedAudio {
  return { samples: new Float64Array(samples), sampleRate };
}

/** What is no number in it counts as silence. */
function loopbackOf({ loopback, sampleRate }: TakeCapture): CapturedAudio | null {
  if (!loopback) return null;
  const samples = Float64Array.from(loopback, (value) => (Number.isFinite(value) ? value : 0));
  return { samples, sampleRate };
}

/** Sweeps shorter than this fill their segment, and other sound hides under them, seconds. */
const openSweepSeconds = 2;

function shortSweepNotes({ segments, sampleRate }: Schedule): string[] {
  const seconds = Math.min(...segments.map(({ sweep }) => sweep.lengthSamples)) / sampleRate;
  if (seconds >= openSweepSeconds) return [];
  return [
    `Sweeps of ${seconds.toFixed(1)} s hide other sound: a slammed door or a voice may go unnamed. Use ${openSweepSeconds} s or more.`,
  ];
}

function calibrationNotes(calibration: MicrophoneCalibration | null): string[] {
  if (!calibration) return [];
  const phase = calibration.phaseDegrees ? "the file's phase" : 'minimum phase';
  const { name } = calibration;
  return [`The microphone's response (${name}) is taken out of all readings, with ${phase}.`];
}

/** The reference speaker's arrival in its own sweeps; null when they are damaged or too weak. */
function referenceArrival({ ir, mendedHz }: GatheredSweeps): Arrival | null {
  const arrival = ir && mendedHz === null ? findArrival(ir) : null;
  return arrival?.bandAdapted === false ? arrival : null;
}

/** The same speaker's marks and sweep arrive together, up to this. */
const slipSeconds = 0.4e-3;

/**
 * The reference's sweeps, spoilt when they do not arrive with its marks: audio was lost and put back
 * between the two. Every other speaker of the take is timed against it.
 */
function holdAgainstMarks(sweeps: GatheredSweeps, byMarks: Arrival | null): GatheredSweeps {
  const bySweep = referenceArrival(sweeps);
  if (!bySweep || !byMarks || byMarks.earlierPossible || bySweep.earlierPossible) return sweeps;
  if (Math.abs(bySweep.seconds - byMarks.seconds) <= slipSeconds) return sweeps;
  const sentence =
    'Its sweep does not arrive with its marks: audio was lost and put back beside it. Repeat this segment.';
  return {
    ...sweeps,
    ir: null,
    faults: [...sweeps.faults, { kind: 'lost', sentence }],
    spoilt: sentence,
  };
}

function refuseCapture({ samples, sampleRate }: CapturedAudio, schedule: Schedule): Trouble | null {
  const bad = findNotNumber(samples);
  if (bad >= 0) {
    return trouble(
      'not-a-number',
      `The capture is damaged: sample ${bad} (${(bad / sampleRate).toFixed(3)} s) is no number. Export the recording again.`,
    );
  }
  if (!samples.some((value) => value !== 0)) {
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
