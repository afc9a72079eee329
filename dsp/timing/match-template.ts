import { complexPlan } from '../fft/complex-plan';
import { multiplyConjugate } from '../fft/convolve';
import { nextPowerOfTwo } from '../fft/fft';
import type { Baseband } from './baseband';

/**
 * Squared normalised correlation, 0 … 1, of a complex template (interleaved re, im) with the
 * stretch of `base` that starts at each entry: 1 where the stretch is the template times any
 * factor, whatever its level or polarity. Stretches 90 dB below the strongest count as silence.
 * Throws RangeError when the template is empty. Common practice (normalised matched filter).
 */
export function matchTemplate(base: Baseband, template: Float64Array): Float64Array {
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
  const templateEnergy = energyOf(template);
  const energies = stretchEnergies(samples, width);
  const floor = 1e-9 * largestOf(energies);
  const match = new Float64Array(length);
  if (!(templateEnergy > 0) || floor === 0) return match;
  for (let start = 0; start < length; start += hop) {
    plan.forward(correlation, padded(samples, start, block));
    multiplyConjugate(correlation, filter);
    plan.inverse(block, correlation);
    const end = Math.min(start + hop, length);
    for (let n = start; n < end; n++) {
      const re = block[2 * (n - start)] ?? 0;
      const im = block[2 * (n - start) + 1] ?? 0;
      const energy = ((energies[n] ?? 0) + floor) * templateEnergy;
      const power = re * re + im * im;
      match[n] = power < energy ? power / energy : 1;
    }
  }
  return match;
}

export interface Peak {
  readonly index: number;
  readonly value: number;
}

/** Entries of at least `least` that nothing within `reach` entries exceeds, in order of index. */
export function findPeaks(values: Float64Array, least: number, reach: number): Peak[] {
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

function largestOf(values: Float64Array): number {
  let largest = 0;
  for (let n = 0; n < values.length; n++) {
    const value = values[n] ?? 0;
    if (value > largest) largest = value;
  }
  return largest;
}

function energyOf(signal: Float64Array): number {
  let energy = 0;
  for (const value of signal) energy += value * value;
  return energy;
}

/** Energy of the `width` entries from each entry on. */
function stretchEnergies(samples: Float64Array, width: number): Float64Array {
  const length = samples.length / 2;
  const sums = new Float64Array(length + 1);
  for (let n = 0; n < length; n++) {
    const re = samples[2 * n] ?? 0;
    const im = samples[2 * n + 1] ?? 0;
    sums[n + 1] = (sums[n] ?? 0) + re * re + im * im;
  }
  for (let n = 0; n < length; n++) {
    const end = n + width < length ? n + width : length;
    const energy = (sums[end] ?? 0) - (sums[n] ?? 0);
    sums[n] = energy > 0 ? energy : 0;
  }
  return sums.subarray(0, length);
}

/** Fills the block with complex entries from `start` on, and zeros after the signal's end. */
function padded(signal: Float64Array, start: number, block: Float64Array): Float64Array {
  const piece = signal.subarray(2 * start, Math.min(2 * start + block.length, signal.length));
  block.set(piece);
  block.fill(0, piece.length);
  return block;
}
