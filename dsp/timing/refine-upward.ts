import type { ImpulseResponse } from '../response/impulse-response';
import { scratch } from '../signal/scratch';
import { analyticBand, fineEnvelope } from './analytic-band';
import { isPeak, refinePeak } from './envelope-peak';

/** Above this a speaker's crossover no longer delays part of the sound. */
const lowHz = 6000;
const reachSeconds = 0.1e-3;
const pieceSeconds = 0.012;
const nearSamples = 200;
const factor = 8;
const room = scratch();

/**
 * The maximum of the envelope above 6 kHz (up to highHz) that lies nearest to `index`, within
 * 0.1 ms of it and not below `least`; `index` itself when there is none.
 */
export function refineUpward(
  ir: ImpulseResponse,
  index: number,
  highHz: number,
  least: number,
): number {
  const { samples, sampleRate } = ir;
  if (!(highHz > 1.5 * lowHz)) return index;
  const half = Math.round(pieceSeconds * sampleRate);
  const from = Math.max(0, Math.round(index) - half);
  const piece = samples.slice(from, Math.round(index) + half);
  const complex = analyticBand(piece, sampleRate, lowHz, highHz, room);
  const start = Math.round(index) - from - nearSamples;
  const fine = fineEnvelope(complex, start, 2 * nearSamples, factor);
  const middle = Math.round((index - from - start) * factor);
  const reach = Math.round(reachSeconds * sampleRate * factor);
  let best = index;
  for (let n = middle - reach; n <= middle + reach; n++) {
    if ((fine[n] ?? 0) < least || !isPeak(fine, n)) continue;
    const at = from + start + refinePeak(fine, n) / factor;
    if (best === index || Math.abs(at - index) < Math.abs(best - index)) best = at;
  }
  return best;
}
