import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import { checkNoiseBand } from './noise-bands';
import type { NoiseRequest } from './noise-state';

const resolutions = [1, 3, 6, 12, 24];
const averaging = [3, 120] as const;
/** A line carries sound up to this share of its rate. */
const usableShare = 0.46;

/** What is wrong with a request, at a line's rate where known; null when nothing is. */
export function checkNoiseRequest(request: NoiseRequest, sampleRate?: number): Trouble | null {
  const { lowHz, highHz, gainDb, bandsPerOctave, averagingSeconds, kind } = request;
  const topHz = sampleRate === undefined ? undefined : Math.floor(usableShare * sampleRate);
  const band = checkNoiseBand(lowHz, highHz, topHz);
  if (band) return band;
  if (kind === 'noise' && !(gainDb <= 0 && gainDb > -Infinity)) {
    return trouble(
      'bad-number',
      msg(str`The level of the noise must be 0 dB or less, not ${gainDb}.`),
    );
  }
  if (!resolutions.includes(bandsPerOctave)) {
    return trouble(
      'bad-number',
      msg(
        str`The spectrum shows ${resolutions.join(', ')} bands an octave, not ${bandsPerOctave}.`,
      ),
    );
  }
  if (!(averagingSeconds >= averaging[0] && averagingSeconds <= averaging[1])) {
    return trouble(
      'bad-number',
      msg(
        str`Averaging takes ${averaging[0]} to ${averaging[1]} seconds, not ${averagingSeconds}.`,
      ),
    );
  }
  return null;
}
