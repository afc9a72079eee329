import { logBand, smoothOnGrid } from '../../dsp/bass/log-band';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import { powerToDb } from '../../dsp/level/decibels';

/** Where the subs are levelled, Hz, and how far down their upper end is told, dB. */
const levelHz = [40, 80] as const;
const downDb = 6;

/**
 * Where the subs are 6 dB below their 40 to 80 Hz level for good, in octave means of the power over
 * all seats, Hz; null where the grid ends first. The room moves it by a third of an octave or so.
 * Own method.
 */
export function subReach(hz: Float64Array, seats: SeatTransfers): number | null {
  const power = hz.map((_, k) =>
    seats.reduce((sum, { re, im }) => sum + (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2, 0),
  );
  const { first, weights } = logBand(hz, levelHz[0], levelHz[1]);
  let level = 0;
  for (const [k, weight] of weights.entries()) level += weight * (power[first + k] ?? 0);
  if (!(level > 0)) return null;
  const smooth = smoothOnGrid(hz, power, 1);
  // Half an octave below the end of the grid the means are whole.
  const whole = hz.findLastIndex((f) => f * Math.SQRT2 <= (hz.at(-1) ?? 0));
  const lowest = powerToDb(level) - downDb;
  let reach: number | null = null;
  for (let k = whole; k >= 0 && powerToDb(smooth[k] ?? 0) < lowest; k--) reach = hz[k] ?? null;
  return reach !== null && reach > levelHz[1] ? reach : null;
}
