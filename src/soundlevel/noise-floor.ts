import { isTrouble, type Trouble } from '../trouble';
import type { ClimbEar, Hearing } from './climb-ear';

/** What the microphone hears while nothing plays. */
export interface NoiseFloor {
  /** Power in the deciding band, mean square re full scale. */
  readonly bandPower: number;
  /** Part of it that comes again after one period, as hum does. */
  readonly repeatedPower: number;
  readonly spectrum: Float64Array;
  /** Whether the microphone clips by itself. */
  readonly clipped: boolean;
}

/** Audio right after opening is not yet to be trusted. */
const settleSeconds = 1;
const listenSeconds = 2;
/** Least noise power that is believed, mean square: a line of 24 bits has about as much. */
const leastPower = 1e-14;

/** A stretch louder than the middle one by this is a bang, not the floor. */
const bangRatio = 2;

/**
 * Listens to the silence for about two seconds; means over overlapping periods, without those that
 * a bang made twice as loud as the middle one.
 */
export async function hearNoiseFloor(
  ear: ClimbEar,
  onHop: (seconds: number, hearing: Hearing) => void,
): Promise<NoiseFloor | Trouble> {
  const period = 4 * ear.hopSeconds;
  const last = settleSeconds + period + listenSeconds;
  const heard: Hearing[] = [];
  for (let at = ear.hopSeconds; at <= last || heard.length === 0; at += ear.hopSeconds) {
    const hearing = await ear.listen();
    if (isTrouble(hearing)) return hearing;
    onHop(at, hearing);
    if (at >= settleSeconds + period) heard.push(hearing);
  }
  const sorted = heard.toSorted((a, b) => a.bandPower - b.bandPower);
  const middle = sorted[Math.floor((sorted.length - 1) / 2)]?.bandPower ?? 0;
  const quiet = heard.filter(({ bandPower }) => bandPower <= bangRatio * middle);
  const spectrum = new Float64Array(heard[0]?.spectrum.length ?? 0);
  for (const hearing of quiet) {
    for (let k = 0; k < spectrum.length; k++) {
      spectrum[k] = (spectrum[k] ?? 0) + (hearing.spectrum[k] ?? 0) / quiet.length;
    }
  }
  const mean = (of: (hearing: Hearing) => number): number =>
    quiet.reduce((sum, hearing) => sum + of(hearing), 0) / quiet.length;
  return {
    bandPower: Math.max(
      mean((hearing) => hearing.bandPower),
      leastPower,
    ),
    repeatedPower: mean((hearing) => hearing.repeatedPower),
    spectrum,
    clipped: quiet.some((hearing) => hearing.clipped),
  };
}
