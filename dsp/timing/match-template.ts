import { complexPlan } from '../fft/complex-plan';
import { multiplyConjugate } from '../fft/convolve';
import { nextPowerOfTwo } from '../fft/fft';
import { fillPowers, type Baseband } from './baseband';

/** A stretch whose mean power is so much less than that of the strongest entry counts as silence. */
const silence = 1e-10;
/** Energies are summed up anew so often, entries: what rounding leaves does not grow. */
const run = 8192;

/**
 * Squared normalised correlation, 0 … 1, of a complex template (interleaved re, im) with the
 * stretch of `base` that starts at each entry: 1 where the stretch is the template times any
 * factor, whatever its level or polarity. Stretches 100 dB below the strongest entry count as silence.
 * With `near`, a match of another template, only blocks that hold `leastNear` of it somewhere are
 * looked at; elsewhere the answer is 0. Throws RangeError when the template is empty. Common practice
 * (normalised matched filter).
 */
export function matchTemplate(
  base: Baseband,
  template: Float32Array,
  near: Float32Array | null = null,
  leastNear = 0,
): Float32Array {
  const { samples } = base;
  const length = samples.length / 2;
  const width = template.length / 2;
  if (width < 1) throw new RangeError('template must hold at least one entry, got none');
  const size = Math.max(8192, nextPowerOfTwo(4 * width));
  const hop = size - width + 1;
  const plan = complexPlan(size);
  const filter = new Float64Array(2 * size);
  const block = new Float64Array(2 * size);
  const correlation = new Float64Array(2 * size);
  plan.forward(filter, padded(template, 0, block));
  const powers = new Float32Array(length);
  for (let start = 0; start < length; start += hop) {
    if (near && !holds(near, start - width, start + hop + width, leastNear)) continue;
    plan.forward(correlation, padded(samples, start, block));
    multiplyConjugate(correlation, filter);
    plan.inverse(block, correlation);
    fillPowers(block, 0, powers.subarray(start, start + hop));
  }
  return normalise(powers, base, template);
}

/**
 * Makes matches, as matchTemplate's, of the powers of a template's correlation with the stretches
 * that start at each entry; in their place.
 */
export function normalise(
  powers: Float32Array,
  { samples, peakPower }: Baseband,
  template: Float32Array,
): Float32Array {
  const width = template.length / 2;
  const templateEnergy = energyOf(template);
  const floor = silence * width * peakPower;
  if (!(templateEnergy > 0 && floor > 0)) return powers.fill(0);
  for (let from = 0; from < powers.length; from += run) {
    const to = Math.min(powers.length, from + run);
    if (isZero(powers, from, to)) continue;
    let energy = stretchEnergy(samples, from, width);
    for (let n = from; n < to; n++) {
      const power = powers[n] ?? 0;
      const most = (Math.max(0, energy) + floor) * templateEnergy;
      powers[n] = power < most ? power / most : 1;
      energy += powerAt(samples, n + width) - powerAt(samples, n);
    }
  }
  return powers;
}

export interface Peak {
  readonly index: number;
  readonly value: number;
}

/** Entries of at least `least` that nothing within `reach` entries exceeds, in order of index. */
export function findPeaks(values: Float32Array, least: number, reach: number): Peak[] {
  const peaks: Peak[] = [];
  let best = -1;
  for (let n = 0; n < values.length; n++) {
    const value = values[n] ?? 0;
    if (best >= 0 && n - best > reach) {
      peaks.push({ index: best, value: values[best] ?? 0 });
      best = -1;
    }
    if (value < least) continue;
    if (best < 0 || value > (values[best] ?? 0)) best = n;
  }
  if (best >= 0) peaks.push({ index: best, value: values[best] ?? 0 });
  return peaks;
}

/** Whether any of values[from … to) is at least so much. */
function holds(values: Float32Array, from: number, to: number, least: number): boolean {
  const end = Math.min(to, values.length);
  for (let n = Math.max(0, from); n < end; n++) if ((values[n] ?? 0) >= least) return true;
  return false;
}

function isZero(values: Float32Array, from: number, to: number): boolean {
  for (let n = from; n < to; n++) if (values[n] !== 0) return false;
  return true;
}

/** Energy of `width` entries from `first` on, as far as there are so many. */
function stretchEnergy(samples: Float32Array, first: number, width: number): number {
  const end = Math.min(first + width, samples.length / 2);
  let energy = 0;
  for (let n = first; n < end; n++) energy += powerAt(samples, n);
  return energy;
}

/** 0 beyond the end. */
function powerAt(samples: Float32Array, n: number): number {
  if (2 * n >= samples.length) return 0;
  const re = samples[2 * n] ?? 0;
  const im = samples[2 * n + 1] ?? 0;
  return re * re + im * im;
}

function energyOf(signal: Float32Array): number {
  let energy = 0;
  for (let n = 0; n < signal.length; n++) energy += (signal[n] ?? 0) ** 2;
  return energy;
}

/** Fills the block with complex entries from `start` on, and zeros after the signal's end. */
function padded(signal: Float32Array, start: number, block: Float64Array): Float64Array {
  const piece = signal.subarray(2 * start, Math.min(2 * start + block.length, signal.length));
  block.set(piece);
  block.fill(0, piece.length);
  return block;
}
