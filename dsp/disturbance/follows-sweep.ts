import { sweepRateSeconds, sweepTimeSeconds, type SweepSpec } from '../signal/sweep';
import type { BandTiles } from './band-tiles';
import type { EventShape } from './event-shape';

/** Share of an event on one side of the sweep's frequency, and its climb re the sweep's, at least. */
const leastShare = 0.9;
const leastClimb = 0.4;
const leastSeconds = 0.4;
/** Distortion does not pause as speech does: so much of its time holds something. */
const leastFilled = 0.85;

/**
 * Whether an event climbs with the sweep, all above or all below it: distortion of a speaker or of
 * a clipped input, or a decay longer than was read, which are the take's own. `seen` is weighed per band by
 * `weights`; the climb is that of its pitch over what its mean spectrum would show in the tiles
 * that `hidden` leaves.
 */
export function followsSweep(
  seen: Float64Array,
  hidden: Uint8Array,
  tiles: BandTiles,
  weights: readonly number[],
  { spectrum, span }: EventShape,
  sweep: SweepSpec,
  sweepAt: number,
): boolean {
  const { frames, hop, bands } = tiles;
  const { from, to } = span;
  const sums = { weight: 0, above: 0, time: 0, pitch: 0, timeTime: 0, timePitch: 0 };
  let count = 0;
  for (let n = from; n < to; n++) {
    const time = (n * hop - sweepAt) / sweep.sampleRate;
    let weight = 0;
    let pitch = 0;
    let usual = 0;
    let usualPitch = 0;
    for (const [b, { midHz }] of bands.entries()) {
      const value = (weights[b] ?? 0) * (seen[b * frames + n] ?? 0);
      weight += value;
      pitch += value * Math.log(midHz);
      const expected = hidden[b * frames + n] ? 0 : (weights[b] ?? 0) * (spectrum[b] ?? 0);
      usual += expected;
      usualPitch += expected * Math.log(midHz);
      if (time < sweepTimeSeconds(sweep, midHz)) sums.above += value;
    }
    sums.weight += weight;
    if (weight <= 0 || usual <= 0) continue;
    count++;
    // Every frame counts alike for the climb, however loud.
    const mean = pitch / weight - usualPitch / usual;
    sums.time += time;
    sums.pitch += mean;
    sums.timeTime += time * time;
    sums.timePitch += time * mean;
  }
  const spread = count * sums.timeTime - sums.time ** 2;
  if ((count * hop) / sweep.sampleRate < leastSeconds || spread <= 0) return false;
  const climb = (count * sums.timePitch - sums.time * sums.pitch) / spread;
  const climbs = climb * sweepRateSeconds(sweep) > leastClimb;
  const above = sums.above / sums.weight;
  if (above > leastShare) return climbs && count > leastFilled * (to - from);
  return climbs && above < 1 - leastShare;
}
