import type { Readings } from '../../src/reading/reading';
import type { SpeakerTruth } from '../loop/room/truth';
import { outputOf } from './live-session';

/** What was read of a take against what is true of the loop's room. */
export interface Judgement {
  /** Numbers given without a fault beside them that are wrong, each as text. Must be empty. */
  readonly wrong: readonly string[];
  /** Channels that came out without a fault. */
  readonly clean: number;
  /** Channels with a named fault. */
  readonly flagged: readonly string[];
  readonly worstMillimetres: number;
  readonly worstLevelDb: number;
  /** How often the true f10 lies in its interval, and of how many. */
  readonly covered: readonly [number, number];
}

/** Limits within which a number is right: metres for mains, for subs (see README), decibels. */
const mainMetres = 0.01;
const subMetres = 0.6;
const levelDb = 0.05;

/**
 * Holds every number of every channel against the truth: times relative to the reference, levels
 * as they are with a stimulus of this peak.
 */
export function judgeReadings(
  readings: Readings,
  truth: readonly SpeakerTruth[],
  peakDb = -12,
): Judgement {
  const of = (output: number | undefined) => truth.find((one) => one.output === output);
  const reference = of(outputOf[readings.reference]);
  const wrong: string[] = [];
  const flagged: string[] = [];
  let [clean, worstMillimetres, worstLevelDb, covered, judged] = [0, 0, 0, 0, 0];
  for (const reading of readings.channels) {
    const { channel, faults, distanceMetres, polarity, rolloff } = reading;
    const speaker = of(outputOf[channel]);
    if (!speaker || !reference) throw new Error(`the loop has no ${channel}`);
    if (faults.length > 0) flagged.push(`${channel} ${faults.map(({ kind }) => kind).join('+')}`);
    else clean++;
    const sub = channel.startsWith('Sub');
    if (distanceMetres !== null && faults.length === 0) {
      const path = sub
        ? speaker.arrivalSeconds - reference.arrivalSeconds
        : (speaker.pathMetres - reference.pathMetres) / 343.2;
      const error = distanceMetres - readings.referenceDistanceMetres - path * 343.2;
      if (!sub) worstMillimetres = Math.max(worstMillimetres, Math.abs(error) * 1000);
      if (Math.abs(error) > (sub ? subMetres : mainMetres)) {
        wrong.push(`${channel} distance ${(error * 1000).toFixed(1)} mm off`);
      }
    }
    if (reading.levelDb !== null && faults.length === 0) {
      const error = reading.levelDb - speaker.levelDb - peakDb;
      worstLevelDb = Math.max(worstLevelDb, Math.abs(error));
      if (Math.abs(error) > levelDb) wrong.push(`${channel} level ${error.toFixed(3)} dB off`);
    }
    if (polarity !== 'cannot tell' && polarity !== speaker.polarity) {
      wrong.push(`${channel} polarity ${polarity}`);
    }
    if (rolloff && !sub) {
      const [low, high] = rolloff.f10Hz.interval;
      judged++;
      if (low <= speaker.f10Hz && speaker.f10Hz <= high) covered++;
    }
  }
  return { wrong, clean, flagged, worstMillimetres, worstLevelDb, covered: [covered, judged] };
}
