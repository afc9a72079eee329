import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { gaussian, seededRandom } from '../../../dsp/signal/random';

/** A mode: it starts at the arrival and loses 60 dB in `seconds`. */
export interface Ring {
  readonly hz: number;
  readonly seconds: number;
  readonly amplitude: number;
  /** Phase at the arrival, radians; default 0. */
  readonly phase?: number;
}

const zeroIndex = 8000;

/** Modes that ring from zero delay on, in white noise of an rms; 1.53 s at 48 kHz. */
export function ringing(rings: readonly Ring[], noise: number, seed: number): ImpulseResponse {
  const next = gaussian(seededRandom(seed));
  const samples = new Float64Array(73_440).map((_, n) => {
    const t = (n - zeroIndex) / 48_000;
    const sound = rings.reduce((sum, { hz, seconds, amplitude, phase = 0 }) => {
      const fall = 10 ** ((-3 * t) / seconds);
      return sum + amplitude * fall * Math.sin(2 * Math.PI * hz * t + phase);
    }, 0);
    return (t < 0 ? 0 : sound) + noise * next();
  });
  return { samples, sampleRate: 48_000, zeroIndex };
}
