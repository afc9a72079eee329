import { arrivalIndex } from './gate';
import type { ImpulseResponse } from './impulse-response';

export interface CycleWindow {
  /** Seconds after zero delay. */
  readonly arrivalSeconds: number;
  /** Periods of each frequency that are kept after the arrival, above 0. */
  readonly cycles: number;
  /** Frequencies, above 0 and up to half the sample rate. */
  readonly hz: ArrayLike<number>;
}

/** A response at some frequencies; its phase counts from the arrival. */
export interface WindowedSpectrum {
  readonly power: Float64Array;
  /** −π … π. */
  readonly phaseRadians: Float64Array;
  /** Below this the response ends before so many periods have passed, Hz. */
  readonly limitHz: number;
}

/** Periods kept before the arrival, for what a band-limited arrival sends ahead. */
const cyclesBefore = 1;
/** Turning factors are computed anew after so many steps, before their errors grow. */
const turnsAnew = 256;

/**
 * The response with a window of its own at every frequency:
 * H(f) = Σ h(t)·w(t·f)·e^(−2πif(t − t₀)), t₀ the arrival, w half a Hann window from 1 at the arrival
 * to 0 after `cycles` periods, and before it to 0 within one period. So the treble is that of the
 * direct sound and the bass that of the room. Where the response ends before the window does, the
 * window is made as short as what is left of it. Direct sums, no interpolation between windows.
 * Throws RangeError for an arrival outside the response, cycles not above 0, or a frequency out of
 * range. Common practice; window and ends our own.
 */
export function windowedSpectrum(ir: ImpulseResponse, window: CycleWindow): WindowedSpectrum {
  const { arrivalSeconds, cycles, hz } = window;
  const { samples, sampleRate } = ir;
  const centre = arrivalIndex(ir, arrivalSeconds);
  if (!(cycles > 0 && cycles < Infinity)) {
    throw new RangeError(`cycles must be positive, got ${cycles}`);
  }
  // The window reaches 0 at the sample after the last, and at the one before the first.
  const after = samples.length - centre;
  const before = centre + 1;
  const power = new Float64Array(hz.length);
  const phaseRadians = new Float64Array(hz.length);
  for (let k = 0; k < hz.length; k++) {
    const f = hz[k] ?? 0;
    if (!(f > 0 && f <= sampleRate / 2)) {
      throw new RangeError(`hz must lie above 0 and up to ${sampleRate / 2}, got ${f}`);
    }
    const period = sampleRate / f;
    const tail = Math.min(cycles * period, after);
    const lead = Math.min(cyclesBefore * period, before);
    const middle = Math.ceil(centre);
    const step = (2 * Math.PI) / period;
    const first = Math.max(0, Math.floor(centre - lead) + 1);
    const end = Math.min(samples.length, Math.ceil(centre + tail));
    const ahead = sumUnder(samples, centre, [first, middle], lead, step);
    const behind = sumUnder(samples, centre, [middle, end], tail, step);
    const [re, im] = [ahead.re + behind.re, ahead.im + behind.im];
    power[k] = re * re + im * im;
    phaseRadians[k] = Math.atan2(im, re);
  }
  return { power, phaseRadians, limitHz: (cycles * sampleRate) / after };
}

/**
 * Σ h_n·½(1 + cos(π(n − centre)/length))·e^(−i·step·(n − centre)) over a range of samples. Both
 * cosines turn by recurrence.
 */
function sumUnder(
  samples: Float64Array,
  centre: number,
  [first, end]: readonly [number, number],
  length: number,
  step: number,
): { re: number; im: number } {
  const fade = Math.PI / length;
  const [stepCos, stepSin] = [Math.cos(step), Math.sin(step)];
  const [fadeCos, fadeSin] = [Math.cos(fade), Math.sin(fade)];
  let re = 0;
  let im = 0;
  for (let from = first; from < end; from += turnsAnew) {
    const past = from - centre;
    let [cos, sin] = [Math.cos(step * past), Math.sin(step * past)];
    let [level, side] = [Math.cos(fade * past), Math.sin(fade * past)];
    for (let n = from; n < Math.min(from + turnsAnew, end); n++) {
      const value = (samples[n] ?? 0) * 0.5 * (1 + level);
      re += value * cos;
      im -= value * sin;
      const nextCos = cos * stepCos - sin * stepSin;
      sin = cos * stepSin + sin * stepCos;
      cos = nextCos;
      const nextLevel = level * fadeCos - side * fadeSin;
      side = level * fadeSin + side * fadeCos;
      level = nextLevel;
    }
  }
  return { re, im };
}
