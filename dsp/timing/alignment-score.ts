import { deconvolveSweep } from '../response/deconvolve';
import type { SweepSpec } from '../signal/sweep';
import { analyticBand } from './analytic-band';
import type { Samples } from '../signal/samples';

const lowestHz = 44;
const highestHz = 17_000;
const smoothSeconds = 0.001;
const responseSeconds = 0.3;

/**
 * How well all octaves of a captured sweep agree on one moment: the response's energy in each
 * octave, each taken as a distribution over time, summed, smoothed over 1 ms, squared and summed.
 * Larger when every part of the sweep is where it belongs; only to compare takes of one sweep with
 * each other. captured[startIndex] is the moment the sweep starts.
 */
export function alignmentScore(captured: Samples, startIndex: number, sweep: SweepSpec): number {
  const { sampleRate } = sweep;
  const lengthSamples = startIndex + Math.round(responseSeconds * sampleRate);
  const { samples } = deconvolveSweep(captured, startIndex, sweep, {
    preSamples: startIndex,
    lengthSamples,
  });
  const sum = new Float64Array(lengthSamples);
  const low = Math.max(lowestHz, 2 * sweep.startHz);
  const high = Math.min(highestHz, 0.85 * sweep.endHz);
  for (let hz = low; hz * 1.4 < high; hz *= 2) {
    const band = analyticBand(samples, sampleRate, hz * 1.1, Math.min(hz * 1.8, high));
    let energy = 0;
    for (const value of band) energy += value * value;
    if (!(energy > 0)) continue;
    for (let n = 0; n < lengthSamples; n++) {
      const [re, im] = [band[2 * n] ?? 0, band[2 * n + 1] ?? 0];
      sum[n] = (sum[n] ?? 0) + (re * re + im * im) / energy;
    }
  }
  const span = Math.max(1, Math.round(smoothSeconds * sampleRate));
  let running = 0;
  let score = 0;
  for (let n = 0; n < lengthSamples; n++) {
    running += (sum[n] ?? 0) - (n >= span ? (sum[n - span] ?? 0) : 0);
    score += running * running;
  }
  return score / span;
}
