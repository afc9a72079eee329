import { powerToDb } from '../../dsp/level/decibels';
import { createFrequencyWeighting } from '../../dsp/level/frequency-weighting';
import { createTimeWeighting, type TimeWeighting } from '../../dsp/level/time-weighting';
import type { Weighting } from '../../dsp/level/weighting';
import type { SoundLevelCalibration } from '../microphone/calibration';
import type { SoundLevel } from './sound-level';

/** A sound level meter that is fed what the microphone hears. */
export interface SoundLevelMeter {
  push(samples: ArrayLike<number>): void;
  /** Chooses what read() shows; it is right at once, nothing starts over. */
  set(weighting: Weighting, time: TimeWeighting): void;
  /** Null until something was heard. */
  read(): SoundLevel | null;
  /** Mean A-weighted level since last asked, dB re full scale; −300 when nothing came. */
  aWeightedDb(): number;
}

const weightings = ['A', 'C', 'Z'] as const;

/**
 * Meter for microphone audio at `sampleRate` (44100 to 384000, else RangeError), A and slow at
 * first. Levels are in dB re full scale (rms of a full-scale square is 0 dB), or dB SPL when
 * calibrated. All weightings run all the time. Source: IEC 61672-1:2013; see dsp/level.
 */
export function createSoundLevelMeter(
  sampleRate: number,
  soundLevel: SoundLevelCalibration | null,
): SoundLevelMeter {
  const ways = weightings.map((weighting) => ({
    weighting,
    weigh: createFrequencyWeighting(weighting, sampleRate),
    fast: { follow: createTimeWeighting('fast', sampleRate), power: 0 },
    slow: { follow: createTimeWeighting('slow', sampleRate), power: 0 },
  }));
  let chosen: { weighting: Weighting; time: TimeWeighting } = { weighting: 'A', time: 'slow' };
  let heard = false;
  let energy = 0;
  let samplesSince = 0;

  const push = (samples: ArrayLike<number>): void => {
    if (samples.length === 0) return;
    heard = true;
    samplesSince += samples.length;
    for (const { weighting, weigh, fast, slow } of ways) {
      const weighted = weigh(samples);
      fast.power = fast.follow(weighted);
      slow.power = slow.follow(weighted);
      if (weighting === 'A') for (const x of weighted) energy += x * x;
    }
  };
  return {
    push,
    set: (weighting, time) => {
      chosen = { weighting, time };
    },
    read: () => {
      const way = ways.find(({ weighting }) => weighting === chosen.weighting);
      if (!heard || !way) return null;
      const db = powerToDb(way[chosen.time].power) + (soundLevel?.offsetDb ?? 0);
      return { ...chosen, db, calibrated: soundLevel !== null };
    },
    aWeightedDb: () => {
      const db = powerToDb(samplesSince > 0 ? energy / samplesSince : 0);
      energy = 0;
      samplesSince = 0;
      return db;
    },
  };
}
