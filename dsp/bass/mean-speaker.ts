import { pointBelow } from '../response/log-points';
import { minimumPhase } from '../response/minimum-phase';
import { smoothOnGrid } from './log-band';
import type { SeatTransfers, Transfer } from './transfer';

/** A speaker's level is smoothed over 1/fraction octave: what is finer is the room's. */
const fraction = 1;
/** Slopes at the ends of the grid are taken over so many octaves, and go on beyond. */
const slopeOctaves = 0.5;
/** Below this share of the lowest frequency the level stays. */
const lowestShare = 1 / 8;
/** The transform goes so many times as high as the grid: what falls off there turns phase below. */
const highestTimes = 8;
/** Bins of the transform in the lowest frequency, which keep its phase smooth. */
const binsInLowest = 15;

/**
 * What a source sounds like without room and delay, as far as its levels tell: the minimum-phase
 * response whose level is that of the mean power over seats, smoothed over an octave, on the grid
 * `hz`. A knee is blurred by that: a sub that rolls off at 150 Hz seems a tenth of a period of 80 Hz
 * less late than it is. Beyond the grid the level goes on with the slope of its last half octave.
 * Null for silence at any frequency. Throws RangeError for lengths that differ. Own method from
 * common practice: a speaker in a box is of minimum phase, and the mean over seats and an octave
 * leaves little of the room.
 */
export function meanSpeaker(hz: Float64Array, seats: SeatTransfers): Transfer | null {
  const power = hz.map((_, k) =>
    seats.reduce((sum, { re, im }) => sum + (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2, 0),
  );
  const logLevel = smoothOnGrid(
    hz,
    power.map((p) => Math.log(p / seats.length) / 2),
    fraction,
  );
  const lowest = hz[0] ?? 0;
  const binHz = lowest / binsInLowest;
  const bins = 2 ** Math.ceil(Math.log2((highestTimes * (hz.at(-1) ?? 0)) / binHz));
  if (!logLevel.every(Number.isFinite)) return null;
  const levelAt = extended(hz.map(Math.log), logLevel);
  const floor = Math.log(lowest * lowestShare);
  const phase = minimumPhase(
    Float64Array.from({ length: bins + 1 }, (_, n) =>
      levelAt(Math.max(Math.log(n * binHz), floor)),
    ),
  );
  const turns = hz.map((f) => {
    const n = Math.floor(f / binHz);
    const [below, above] = [phase[n] ?? 0, phase[n + 1] ?? 0];
    return below + (f / binHz - n) * (above - below);
  });
  return {
    re: logLevel.map((level, k) => Math.exp(level) * Math.cos(turns[k] ?? 0)),
    im: logLevel.map((level, k) => Math.exp(level) * Math.sin(turns[k] ?? 0)),
  };
}

/** Straight lines between points, going on beyond them as they end, rising to the middle only. */
function extended(x: Float64Array, y: Float64Array): (at: number) => number {
  const last = x.length - 1;
  const [start, end] = [x[0] ?? 0, x[last] ?? 0];
  const line = (at: number): number => {
    const above = Math.min(last, Math.max(1, pointBelow(x, at) + 1));
    const [a, b] = [x[above - 1] ?? 0, x[above] ?? 1];
    const [low, high] = [y[above - 1] ?? 0, y[above] ?? 0];
    return low + ((at - a) / (b - a)) * (high - low);
  };
  const reach = slopeOctaves * Math.LN2;
  const rise = Math.max(0, line(Math.min(end, start + reach)) - line(start)) / reach;
  const fall = Math.min(0, line(end) - line(Math.max(start, end - reach))) / reach;
  return (at) => {
    if (at < start) return line(start) + rise * (at - start);
    if (at > end) return line(end) + fall * (at - end);
    return line(at);
  };
}
