import { dbToPower, powerToDb } from '../../dsp/level/decibels';
import { createFrequencyWeighting } from '../../dsp/level/frequency-weighting';
import { noiseDose } from '../../dsp/level/noise-dose';
import type { SoundLevelCalibration } from '../microphone/calibration';
import type { Exposure } from './sound-level';

/** Nothing taken yet. */
export const noExposure: Exposure = { dose: null, equivalentDb: null, seconds: 0 };

/**
 * Adds `seconds` at a mean A-weighted level of `aWeightedDbFs` dB re full scale. While not
 * calibrated only time is counted and the rest stays unknown; the first calibrated sound starts
 * the count anew, and sound without a calibration after that is left out, so that dose and
 * equivalent level are always of `seconds`. Throws RangeError for a level that is not finite or
 * seconds below 0. Source of the dose: NIOSH 98-126 (1998).
 */
export function addExposure(
  exposure: Exposure,
  aWeightedDbFs: number,
  seconds: number,
  soundLevel: SoundLevelCalibration | null,
): Exposure {
  if (!Number.isFinite(aWeightedDbFs)) {
    throw new RangeError(`aWeightedDbFs must be finite, got ${aWeightedDbFs}`);
  }
  if (!(seconds >= 0 && seconds < Infinity)) {
    throw new RangeError(`seconds must not be negative, got ${seconds}`);
  }
  const { dose, equivalentDb } = exposure;
  const known = dose !== null && equivalentDb !== null;
  if (!soundLevel) return known ? exposure : { ...exposure, seconds: exposure.seconds + seconds };
  if (seconds === 0) return exposure;
  const db = aWeightedDbFs + soundLevel.offsetDb;
  if (!known) return { dose: noiseDose(db, seconds), equivalentDb: db, seconds };
  const total = exposure.seconds + seconds;
  const energy = dbToPower(equivalentDb) * exposure.seconds + dbToPower(db) * seconds;
  return {
    dose: dose + noiseDose(db, seconds),
    equivalentDb: powerToDb(energy / total),
    seconds: total,
  };
}

/** Adds what the microphone heard of a take, from its first sample to its last. */
export function exposureOfCapture(
  exposure: Exposure,
  samples: Float32Array,
  sampleRate: number,
  soundLevel: SoundLevelCalibration | null,
): Exposure {
  if (samples.length === 0) return exposure;
  const weigh = createFrequencyWeighting('A', sampleRate);
  const block = 65_536;
  let energy = 0;
  for (let at = 0; at < samples.length; at += block) {
    for (const x of weigh(samples.subarray(at, at + block))) energy += x * x;
  }
  const seconds = samples.length / sampleRate;
  return addExposure(exposure, powerToDb(energy / samples.length), seconds, soundLevel);
}
