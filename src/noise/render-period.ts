import { periodicPink } from '../../dsp/signal/pink';
import { periodLength } from './period-length';

const seed = 1;
const kept = new Map<string, Float32Array>();
const mostKept = 4;

/**
 * One period of pink noise, peak 1, as a line plays it; the last four are kept. Takes about a
 * second. Throws RangeError as periodicPink does.
 */
export function renderPeriod(lowHz: number, highHz: number, sampleRate: number): Float32Array {
  const key = [lowHz, highHz, sampleRate].join();
  const period =
    kept.get(key) ??
    Float32Array.from(
      periodicPink({ lowHz, highHz, periodSamples: periodLength(sampleRate), sampleRate, seed }),
    );
  kept.delete(key);
  kept.set(key, period);
  for (const oldest of kept.keys()) {
    if (kept.size <= mostKept) break;
    kept.delete(oldest);
  }
  return period;
}
