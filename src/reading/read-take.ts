import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { MicrophoneCalibration } from '../microphone/calibration';
import type { SettingsInForce } from '../system/declared-settings';
import type { Schedule } from '../take/schedule';
import { assumedLfeNotes, assumeLfe } from './assume-lfe';
import type { CloseTo } from './close-to';
import { isTrouble, type Trouble } from '../trouble';
import { bandTogether } from './band-together';
import { clockReading } from './clock-reading';
import { groundTake, type TakeCapture } from './ground-take';
import { readNoiseFloor } from './noise-floor';
import { readTogether, type ReadingHelper, type Referred } from './read-together';
import type { ChannelReading, Readings } from './reading';
import { frameTake } from './reading-frame';
import { readingStopped } from './reading-troubles';
import { gatherReference } from './reference-sweeps';
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
  /** The speaker the microphone was held to; null or left out: it stood at a seat. */
  readonly close?: CloseTo | null;
  readonly signal?: AbortSignal;
  /** Whoever reads channels beside this thread; left out or empty: it reads them all. */
  readonly helpers?: readonly ReadingHelper[];
  /** Called as each channel is read, in any order where there are helpers; progress 0 … 1. */
  readonly onChannel?: (reading: ChannelReading, progress: number) => void;
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
  const calibration = options.calibration ?? null;
  const grounded = groundTake(
    schedule,
    capture,
    calibration,
    await bandTogether(schedule, capture, options.helpers ?? []),
  );
  if (isTrouble(grounded)) return grounded;
  const { layout, audio, timed, checks, ground } = grounded;
  const declared = options.inForce ?? null;
  const settings = declared && assumeLfe(declared, schedule);
  const inForce = settings && channelsInForce(layout, schedule.reference, settings);
  const own = inForce?.get(schedule.reference) ?? untouched;
  const close = options.close ?? null;
  const refer = (): Referred => {
    const { sweeps, arrival } = gatherReference(ground, audio.samples);
    const framed = frameTake(
      schedule.reference,
      arrival && own.delay ? takeOutDelay(arrival, own.delay) : arrival,
      timed.departure,
      options.referenceDistanceMetres,
      speedOfSound(options.temperatureCelsius),
    );
    return { sweeps, ...framed };
  };
  const unframed = { ...ground, channels: layout.channels, inForce, close };
  const floor: { noise?: Readings['capture']['noise'] } = {};
  const besides = (): void => {
    floor.noise = readNoiseFloor(audio.samples, audio.sampleRate, ground, calibration);
  };
  const read = await readTogether(unframed, audio.samples, refer, { ...options, besides });
  if (!read) return readingStopped();
  const { channels, referred } = read;
  const { frame, notes } = referred;
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
    clock: clockReading(ground.clock, schedule),
    capture: {
      clipped: checks.clipped,
      noiseFloorDb: checks.noiseFloorDb,
      ...floor,
      peakDb: checks.peakDb,
    },
    channels,
    notes: [
      ...timed.notes,
      ...notes,
      ...calibrationNotes(calibration),
      ...takeOutNotes(layout, declared, settings !== declared),
      ...assumedLfeNotes(schedule, layout, settings !== declared),
      ...shortSweepNotes(schedule),
    ],
    joined: [],
    ...(declared ? { inForce: declared } : {}),
  };
}

/** Sweeps shorter than this fill their segment, and other sound hides under them, seconds. */
const openSweepSeconds = 2;

function shortSweepNotes({ segments, sampleRate }: Schedule): string[] {
  const seconds = Math.min(...segments.map(({ sweep }) => sweep.lengthSamples)) / sampleRate;
  if (seconds >= openSweepSeconds) return [];
  return [
    msg(
      str`Sweeps of ${withUnit(numberText(seconds, 1), 's')} hide other sound: a slammed door or a voice may go unnamed. Use ${openSweepSeconds} s or more.`,
    ),
  ];
}

function calibrationNotes(calibration: MicrophoneCalibration | null): string[] {
  if (!calibration) return [];
  const phase = calibration.phaseDegrees ? msg("the file's phase") : msg('minimum phase');
  const { name } = calibration;
  return [
    msg(str`The microphone's response (${name}) is taken out of all readings, with ${phase}.`),
  ];
}
