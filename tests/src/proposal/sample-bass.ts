import { bassGrid } from '../../../dsp/bass/transfer';
import { seededRandom } from '../../../dsp/signal/random';
import type { BassReading } from '../../../src/reading/reading';

/** A loudspeaker that only delays and scales: H(f) = gain · e^(−2πif·seconds). */
export function pureBass(seconds: number, gain = 1): BassReading {
  return bassBy((hz) => ({ gain, phase: -2 * Math.PI * hz * seconds }));
}

/** Bass of any magnitude and phase (radians) over frequency. */
export function bassBy(
  at: (hz: number) => { readonly gain: number; readonly phase: number },
): BassReading {
  const all = Array.from(bassGrid(), at);
  return {
    re: all.map(({ gain, phase }) => gain * Math.cos(phase)),
    im: all.map(({ gain, phase }) => gain * Math.sin(phase)),
  };
}

/** A direct sound and a few reflections of random delay and strength: an invented room. */
export function roomyBass(seconds: number, seed: number): BassReading {
  const random = seededRandom(seed);
  const paths = Array.from({ length: 6 }, (_, n) => ({
    delay: seconds + (n === 0 ? 0 : 0.03 * random()),
    gain: n === 0 ? 1 : 1.2 * (random() - 0.5),
  }));
  const sumOf = (hz: number, part: (angle: number) => number): number =>
    paths.reduce((sum, { delay, gain }) => sum + gain * part(-2 * Math.PI * hz * delay), 0);
  const hz = Array.from(bassGrid());
  return { re: hz.map((f) => sumOf(f, Math.cos)), im: hz.map((f) => sumOf(f, Math.sin)) };
}
