import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { ChannelReading, Estimate, Readings } from '../reading/reading';
import type { PracticeChannelTruth, PracticeTruth } from '../rig/practice-truth';

/** A value that is so, and what was read of it. */
export interface Compared<Value> {
  readonly truth: Value;
  readonly estimate: Value | null;
  readonly interval?: readonly [number, number] | null;
}

/** Readings of a simulated room with the truth beside every estimate. */
export function besideTruth(readings: Readings, truth: PracticeTruth) {
  const { clock, capture, takeId, reference } = readings;
  return {
    format: 'leadline-practice',
    version: 1,
    simulated: true,
    layout: truth.layout,
    seed: truth.seed,
    takeId,
    reference,
    referenceDistanceMetres: truth.referenceDistanceMetres,
    temperatureCelsius: truth.temperatureCelsius,
    clock: {
      skewPpm: compare(truth.skewPpm, clock.skewPpm, clock.skewInterval),
      faults: clock.faults,
    },
    capture,
    channels: readings.channels.map((reading) => {
      const own = truth.channels.find(({ channel }) => channel === reading.channel);
      if (!own) throw new RangeError(`the truth must know ${reading.channel}, got nothing`);
      return compareChannel(reading, own, truth);
    }),
  };
}

function compareChannel(reading: ChannelReading, own: PracticeChannelTruth, truth: PracticeTruth) {
  const metres = (seconds: number): number =>
    truth.referenceDistanceMetres + speedOfSound(truth.temperatureCelsius) * seconds;
  const ceiling = own.ceilingPathMetres;
  const bounce = ceiling === null ? 0 : ceiling - own.distanceMetres;
  const { rolloff } = reading;
  return {
    channel: reading.channel,
    arrivalSeconds: compare(own.arrivalSeconds, reading.arrivalSeconds, reading.arrivalInterval),
    distanceMetres: compare(
      metres(own.arrivalSeconds),
      reading.distanceMetres,
      reading.distanceInterval,
    ),
    ceilingPathMetres: {
      truth: ceiling === null ? null : metres(own.arrivalSeconds) + bounce,
      estimate: reading.ceilingPathMetres,
    },
    polarity: compare<string>(own.inverted ? 'inverted' : 'normal', reading.polarity),
    rolloff: {
      f3Hz: compareEstimate(own.f3Hz, rolloff?.f3Hz),
      f6Hz: compareEstimate(own.f6Hz, rolloff?.f6Hz),
      f10Hz: compareEstimate(own.f10Hz, rolloff?.f10Hz),
      box: {
        ...compare<string>(own.box, rolloff?.box.kind ?? null),
        probability: rolloff?.box.probability ?? null,
      },
    },
    levelDb: reading.levelDb,
    ...(reading.levelInterval === undefined ? {} : { levelInterval: reading.levelInterval }),
    faults: reading.faults,
    notes: reading.notes,
  };
}

function compareEstimate(truth: number, found: Estimate | undefined): Compared<number> {
  return compare(truth, found?.median ?? null, found?.interval ?? null);
}

function compare<Value>(
  truth: Value,
  estimate: Value | null,
  interval?: readonly [number, number] | null,
): Compared<Value> {
  return interval === undefined ? { truth, estimate } : { truth, estimate, interval };
}
