import {
  noiseCurveHz,
  rateNoise,
  rateNoiseCriterion,
  type NoiseRating,
} from '../../dsp/level/noise-curves';
import type { NoiseFloorReading } from './reading';

/** A noise floor held against curves of sound pressure level. */
export interface RatedNoise {
  readonly criterion: NoiseRating;
  readonly rating: NoiseRating;
  /** Levels of the bands from 63 Hz to 8 kHz, dB re 20 µPa. */
  readonly levelsDb: readonly number[];
}

/**
 * NC and NR of a noise floor, with the sound level (dB re 20 µPa) that reads 0 dB re full scale;
 * null when its bands do not reach from 63 Hz to 8 kHz.
 */
export function rateNoiseFloor({ hz, db }: NoiseFloorReading, offsetDb: number): RatedNoise | null {
  const levelsDb = noiseCurveHz.flatMap((nominal) => {
    const band = hz.findIndex((mid) => Math.abs(Math.log2(mid / nominal)) < 0.1);
    const level = db[band];
    return level === undefined ? [] : [level + offsetDb];
  });
  if (levelsDb.length !== noiseCurveHz.length) return null;
  return { criterion: rateNoiseCriterion(levelsDb), rating: rateNoise(levelsDb), levelsDb };
}
