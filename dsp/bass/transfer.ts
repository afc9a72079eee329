import { nextPowerOfTwo, realSignal, realSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { logGrid } from '../response/smoothing';

/** Complex response over frequency; which frequencies, a grid in Hz beside it says. */
export interface Transfer {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Responses of one source at every seat, on one grid. */
export type SeatTransfers = readonly Transfer[];

/** Slow samples on either side of a response that its band limit may ring into. */
const ringing = 32;

/** Frequencies for bass: 15 to 480 Hz, 48 to the octave. */
export function bassGrid(): Float64Array {
  return logGrid(15, 480, 48);
}

/**
 * H(f) = Σ x_n e^(−2πif(t_n − t0)) of an impulse response at the frequencies `hz`, with t_n the
 * delay of sample n and t0 = `referenceSeconds`. The arrival is kept: responses of several sources
 * at one seat may be added when they share t0, which only spares turns of the phase. The response
 * is first brought to a low rate through its spectrum, which costs less than 10⁻⁴ of its peak.
 * Throws RangeError unless the frequencies rise, lie above 0 and end below a quarter of the rate.
 */
export function bassTransfer(
  ir: ImpulseResponse,
  hz: Float64Array,
  referenceSeconds = 0,
): Transfer {
  const highest = checkGrid(hz);
  if (!(4 * highest <= ir.sampleRate)) {
    throw new RangeError(`hz must end at ${ir.sampleRate / 4} or below, got ${highest}`);
  }
  let ratio = 1;
  while (8 * highest * ratio <= ir.sampleRate) ratio *= 2;
  const slow = slowSamples(ir.samples, ratio);
  const start = ir.zeroIndex / ir.sampleRate + referenceSeconds;
  const seconds = ratio / ir.sampleRate;
  const re = new Float64Array(hz.length);
  const im = new Float64Array(hz.length);
  for (const [k, f] of hz.entries()) {
    const turn = -2 * Math.PI * f * seconds;
    const [stepRe, stepIm] = [Math.cos(turn), Math.sin(turn)];
    const first = turn * -ringing + 2 * Math.PI * f * start;
    let [cos, sin] = [Math.cos(first), Math.sin(first)];
    let [sumRe, sumIm] = [0, 0];
    for (let n = 0; n < slow.length; n++) {
      const x = slow[n] ?? 0;
      sumRe += x * cos;
      sumIm += x * sin;
      const next = cos * stepRe - sin * stepIm;
      sin = cos * stepIm + sin * stepRe;
      cos = next;
    }
    re[k] = sumRe;
    im[k] = sumIm;
  }
  return { re, im };
}

/** Highest of frequencies that rise from above 0; throws RangeError for others. */
export function checkGrid(hz: Float64Array): number {
  let last = 0;
  for (const f of hz) {
    if (!(f > last && f < Infinity)) {
      throw new RangeError(`hz must rise from above 0, got ${f} after ${last}`);
    }
    last = f;
  }
  if (hz.length < 2) throw new RangeError(`hz must hold two or more, got ${hz.length}`);
  return last;
}

/**
 * The signal at a rate `ratio` times lower, flat to half the new Nyquist frequency and faded by a
 * raised cosine to it; entry n stands at sample (n − ringing)·ratio. Sums keep their size.
 */
function slowSamples(samples: Float64Array, ratio: number): Float64Array {
  if (ratio === 1) {
    const same = new Float64Array(samples.length + ringing);
    same.set(samples, ringing);
    return same;
  }
  const count = Math.ceil(samples.length / ratio) + 2 * ringing;
  const size = nextPowerOfTwo(count) * ratio;
  const slowSize = size / ratio;
  const spectrum = realSpectrum(samples, size).slice(0, slowSize + 2);
  for (let k = 0; k <= slowSize / 2; k++) {
    const along = Math.max(0, (4 * k) / slowSize - 1);
    const gain = 0.5 * (1 + Math.cos(Math.PI * along));
    spectrum[2 * k] = gain * (spectrum[2 * k] ?? 0);
    spectrum[2 * k + 1] = gain * (spectrum[2 * k + 1] ?? 0);
  }
  const round = realSignal(spectrum, slowSize);
  const slow = new Float64Array(count);
  // What rings before the first sample comes round at the end.
  slow.set(round.subarray(slowSize - ringing));
  slow.set(round.subarray(0, count - ringing), ringing);
  return slow;
}
