import { amplitudeToDb } from '../../../dsp/level/decibels';
import type { MicLevel } from '../port';
import type { CaptureLevel } from './capture-message';

/** Samples at this level or above touched the end of the converter's range. */
const fullScale = 0.9999;

/** A level as screens show it. */
export function levelOf({ rms, peak }: Pick<CaptureLevel, 'rms' | 'peak'>): MicLevel {
  return {
    rmsDb: amplitudeToDb(rms),
    peakDb: amplitudeToDb(peak),
    clipped: peak >= fullScale,
  };
}
