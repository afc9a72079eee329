import type { ImpulseResponse } from '../response/impulse-response';
import { logGrid } from '../response/smoothing';
import { ringing, slowSamples } from '../response/slow-samples';

/** Complex response over frequency; which frequencies, a grid in Hz beside it says. */
export interface Transfer {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Responses of one source at every seat, on one grid. */
export type SeatTransfers = readonly Transfer[];

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
  const re = new Float64Array(hz.length);
  const im = new Float64Array(hz.length);
  const start = ir.zeroIndex / ir.sampleRate + referenceSeconds;
  // The lower an octave, the fewer samples it needs.
  let ratio = 1;
  while (8 * highest * ratio <= ir.sampleRate) ratio *= 2;
  for (let end = hz.length; end > 0; ratio *= 2) {
    const rate = ir.sampleRate / ratio;
    let from = 0;
    while (from < end && 16 * (hz[from] ?? 0) <= rate) from++;
    if (from < end) {
      const slow = slowSamples(ir.samples, ratio);
      for (let k = from; k < end; k++) {
        const { sumRe, sumIm } = sumTurned(slow, hz[k] ?? 0, 1 / rate, start);
        re[k] = sumRe;
        im[k] = sumIm;
      }
    }
    end = from;
  }
  return { re, im };
}

/** Σ x_n e^(−2πif(t_n − start)) of slow samples `seconds` apart. */
function sumTurned(slow: Float64Array, f: number, seconds: number, start: number) {
  const turn = -2 * Math.PI * f * seconds;
  const [stepRe, stepIm] = [Math.cos(turn), Math.sin(turn)];
  const first = turn * -ringing + 2 * Math.PI * f * start;
  let cos = Math.cos(first);
  let sin = Math.sin(first);
  let sumRe = 0;
  let sumIm = 0;
  for (let n = 0; n < slow.length; n++) {
    const x = slow[n] ?? 0;
    sumRe += x * cos;
    sumIm += x * sin;
    const next = cos * stepRe - sin * stepIm;
    sin = cos * stepIm + sin * stepRe;
    cos = next;
  }
  return { sumRe, sumIm };
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
