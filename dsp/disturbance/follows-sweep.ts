import { sweepRateSeconds, sweepTimeSeconds, type SweepSpec } from '../signal/sweep';
import type { BandTiles } from './band-tiles';
import type { Span } from './find-events';

/** Share of an event above the sweep's frequency, and its climb re the sweep's, that make it distortion. */
const leastAbove = 0.9;
const leastClimb = 0.4;
const leastSeconds = 0.25;

/**
 * Whether an event climbs with the sweep, above it: the distortion of a speaker or of a clipped
 * input, which is the take's own. `seen` is weighed per band by `weights`.
 */
export function followsSweep(
  seen: Float64Array,
  tiles: BandTiles,
  weights: readonly number[],
  { from, to }: Span,
  sweep: SweepSpec,
  sweepAt: number,
): boolean {
  const { frames, hop, bands } = tiles;
  const sums = { weight: 0, above: 0, time: 0, pitch: 0, timeTime: 0, timePitch: 0 };
  for (let n = from; n < to; n++) {
    const time = (n * hop - sweepAt) / sweep.sampleRate;
    let weight = 0;
    let pitch = 0;
    for (const [b, { midHz }] of bands.entries()) {
      const value = (weights[b] ?? 0) * (seen[b * frames + n] ?? 0);
      weight += value;
      pitch += value * Math.log(midHz);
      if (time < sweepTimeSeconds(sweep, midHz)) sums.above += value;
    }
    sums.weight += weight;
    if (weight <= 0) continue;
    // Every frame counts alike for the climb, however loud.
    const mean = pitch / weight;
    sums.time += time;
    sums.pitch += mean;
    sums.timeTime += time * time;
    sums.timePitch += time * mean;
  }
  const count = countSeen(seen, tiles, { from, to });
  const spread = count * sums.timeTime - sums.time ** 2;
  if ((count * hop) / sweep.sampleRate < leastSeconds || spread <= 0) return false;
  const climb = (count * sums.timePitch - sums.time * sums.pitch) / spread;
  return sums.above > leastAbove * sums.weight && climb * sweepRateSeconds(sweep) > leastClimb;
}

function countSeen(seen: Float64Array, { bands, frames }: BandTiles, { from, to }: Span): number {
  let count = 0;
  for (let n = from; n < to; n++) {
    if (bands.some((_, b) => (seen[b * frames + n] ?? 0) > 0)) count++;
  }
  return count;
}
