import { complexPlan } from '../fft/complex-plan';
import { multiplyConjugate } from '../fft/convolve';
import { nextPowerOfTwo } from '../fft/fft';
import type { Baseband } from './baseband';

/**
 * Squared normalised correlation, 0 … 1, of a complex template (interleaved re, im) with the
 * stretch of `base` that starts at each entry: 1 where the stretch is the template times any
 * factor, whatever its level or polarity. Stretches 90 dB below the strongest count as silence.
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
  const energies = new Float64Array(size + 1);
  plan.forward(filter, padded(template, 0, block));
  const templateEnergy = energyOf(template);
  let floor = 0;
  for (let start = 0; start < length; start += hop) {
    stretchEnergies(padded(samples, start, block), width, energies);
    floor = Math.max(floor, largestOf(energies, Math.min(hop, length - start)));
  }
  floor *= 1e-9;
  const match = new Float32Array(length);
  if (!(templateEnergy > 0) || floor === 0) return match;
  for (let start = 0; start < length; start += hop) {
    if (near && !holds(near, start - width, start + hop + width, leastNear)) continue;
    stretchEnergies(padded(samples, start, block), width, energies);
    plan.forward(correlation, block);
    multiplyConjugate(correlation, filter);
    plan.inverse(block, correlation);
    const count = Math.min(hop, length - start);
    for (let n = 0; n < count; n++) {
      const re = block[2 * n] ?? 0;
      const im = block[2 * n + 1] ?? 0;
      const energy = ((energies[n] ?? 0) + floor) * templateEnergy;
      const power = re * re + im * im;
      match[start + n] = power < energy ? power / energy : 1;
    }
  }
  return match;
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

function largestOf(values: Float64Array, count: number): number {
  let largest = 0;
  for (let n = 0; n < count; n++) {
    const value = values[n] ?? 0;
    if (value > largest) largest = value;
  }
  return largest;
}

function energyOf(signal: Float32Array): number {
  let energy = 0;
  for (let n = 0; n < signal.length; n++) energy += (signal[n] ?? 0) ** 2;
  return energy;
}

/** Energy of the `width` entries from each entry of a block on, as far as it holds them. */
function stretchEnergies(block: Float64Array, width: number, energies: Float64Array): void {
  const size = block.length / 2;
  let sum = 0;
  energies[0] = 0;
  for (let n = 0; n < size; n++) {
    const re = block[2 * n] ?? 0;
    const im = block[2 * n + 1] ?? 0;
    sum += re * re + im * im;
    energies[n + 1] = sum;
  }
  for (let n = 0; n + width <= size; n++) {
    energies[n] = Math.max(0, (energies[n + width] ?? 0) - (energies[n] ?? 0));
  }
}

/** Fills the block with complex entries from `start` on, and zeros after the signal's end. */
function padded(signal: Float32Array, start: number, block: Float64Array): Float64Array {
  const piece = signal.subarray(2 * start, Math.min(2 * start + block.length, signal.length));
  block.set(piece);
  block.fill(0, piece.length);
  return block;
}
