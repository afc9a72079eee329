import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { Readings } from './reading';

/** What distances rest on beside the arrivals. */
export interface DistanceConditions {
  readonly temperatureCelsius: number;
  readonly referenceDistanceMetres: number;
}

/**
 * Readings of one take at another temperature or tape distance: their distances are
 * reference distance + speed of sound × arrival, and nothing else changes. Exact, without audio.
 * The same readings when nothing changes. Throws RangeError for readings of absolute time, whose
 * distances rest on more than that.
 */
export function rederiveDistances(readings: Readings, conditions: DistanceConditions): Readings {
  if (readings.absolute) throw new RangeError(`take ${readings.takeId} has absolute time`);
  const { temperatureCelsius, referenceDistanceMetres } = conditions;
  if (
    temperatureCelsius === readings.temperatureCelsius &&
    referenceDistanceMetres === readings.referenceDistanceMetres
  ) {
    return readings;
  }
  const faster = speedOfSound(temperatureCelsius);
  const stretch = faster / speedOfSound(readings.temperatureCelsius);
  const metres = (seconds: number): number => referenceDistanceMetres + faster * seconds;
  return {
    ...readings,
    temperatureCelsius,
    referenceDistanceMetres,
    channels: readings.channels.map((channel) => {
      const { arrivalSeconds, arrivalInterval, ceilingPathMetres } = channel;
      const later = (ceilingPathMetres ?? 0) - readings.referenceDistanceMetres;
      return {
        ...channel,
        distanceMetres: arrivalSeconds === null ? null : metres(arrivalSeconds),
        distanceInterval: arrivalInterval && [
          metres(arrivalInterval[0]),
          metres(arrivalInterval[1]),
        ],
        ceilingPathMetres:
          ceilingPathMetres === null ? null : referenceDistanceMetres + stretch * later,
      };
    }),
  };
}
