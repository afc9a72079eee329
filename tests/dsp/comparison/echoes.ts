import type { Transfer } from '../../../dsp/bass/transfer';
import { seededRandom } from '../../../dsp/signal/random';

/** One sound and seven echoes of it within 40 ms, Σ a·e^(−2πif t): what bass in a room looks like. */
export function echoes(seed: number, hz: Float64Array, gain = 1): Transfer {
  const random = seededRandom(seed);
  for (let n = 0; n < 8; n++) random();
  const all = Array.from({ length: 8 }, (_, n) => ({
    size: n === 0 ? gain : gain * 0.6 * (2 * random() - 1),
    seconds: n === 0 ? 0 : 0.04 * random(),
  }));
  const part = (turn: (x: number) => number): Float64Array =>
    hz.map((f) =>
      all.reduce((sum, { size, seconds }) => sum + size * turn(-2 * Math.PI * f * seconds), 0),
    );
  return { re: part(Math.cos), im: part(Math.sin) };
}

/** A response times gain·e^(−2πif seconds). */
export function moved({ re, im }: Transfer, hz: Float64Array, gain: number, seconds = 0): Transfer {
  const at = (k: number): [number, number] => {
    const turn = -2 * Math.PI * (hz[k] ?? 0) * seconds;
    return [gain * Math.cos(turn), gain * Math.sin(turn)];
  };
  return {
    re: re.map((x, k) => x * at(k)[0] - (im[k] ?? 0) * at(k)[1]),
    im: re.map((x, k) => x * at(k)[1] + (im[k] ?? 0) * at(k)[0]),
  };
}

/** a + b. */
export function sumOf(a: Transfer, b: Transfer): Transfer {
  return {
    re: a.re.map((x, k) => x + (b.re[k] ?? 0)),
    im: a.im.map((x, k) => x + (b.im[k] ?? 0)),
  };
}
