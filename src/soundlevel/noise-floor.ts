import { isTrouble, type Trouble } from '../trouble';
import type { ClimbEar } from './climb-ear';

/** What the microphone hears while nothing plays. */
export interface NoiseFloor {
  /** Power in the deciding band, mean square re full scale. */
  readonly bandPower: number;
  readonly spectrum: Float64Array;
  /** Whether the microphone clips by itself. */
  readonly clipped: boolean;
}

/** Audio right after opening is not yet to be trusted. */
const settleSeconds = 1;
const listenSeconds = 2;
/** Least noise power that is believed, mean square: a line of 24 bits has about as much. */
const leastPower = 1e-14;

/** Listens to the silence for about two seconds; means over overlapping periods. */
export async function hearNoiseFloor(
  ear: ClimbEar,
  onHop: (seconds: number) => void,
): Promise<NoiseFloor | Trouble> {
  const period = 4 * ear.hopSeconds;
  const last = settleSeconds + period + listenSeconds;
  let spectrum = new Float64Array(0);
  let bandPower = 0;
  let count = 0;
  let clipped = false;
  for (let at = ear.hopSeconds; at <= last || count === 0; at += ear.hopSeconds) {
    const hearing = await ear.listen();
    if (isTrouble(hearing)) return hearing;
    onHop(at);
    if (at < settleSeconds + period) continue;
    clipped ||= hearing.clipped;
    bandPower += hearing.bandPower;
    const sum = spectrum;
    spectrum = hearing.spectrum.map((power, k) => power + (sum[k] ?? 0));
    count++;
  }
  return {
    bandPower: Math.max(bandPower / count, leastPower),
    spectrum: spectrum.map((power) => power / count),
    clipped,
  };
}
