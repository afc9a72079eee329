import type { BandTiles } from './band-tiles';
import type { EventShape } from './event-shape';
import type { SweepBand } from './sweep-bands';

/** Time over which disturbance and response keep their phase, seconds. */
const coherenceSeconds = 0.15;

/**
 * How far energy of `ratio` to the response's may move its level in a band, dB: its own energy and
 * 2.1 standard deviations of the product of both, at most both in phase.
 */
export function errorOf(ratio: number, widthHz: number): number {
  if (!(ratio > 0)) return 0;
  const parts = 1 + widthHz * coherenceSeconds;
  const power = Math.min(1 + ratio + 2.1 * Math.sqrt(ratio / parts), (1 + Math.sqrt(ratio)) ** 2);
  return 10 * Math.log10(power);
}

/**
 * Energy an event leaves in the window of the response, per band, response units: what is seen of
 * it, and its shape where the take's own sound hides it. `starts` holds the sample of `heard` at
 * which each band's window begins.
 */
export function energyInWindow(
  shape: EventShape,
  seen: Float64Array,
  own: Uint8Array,
  tiles: BandTiles,
  swept: readonly SweepBand[],
  starts: readonly number[],
  windowSamples: number,
): number[] {
  return swept.map(({ gain }, b) => {
    const start = starts[b] ?? 0;
    const from = Math.round(start / tiles.hop);
    const to = Math.round((start + windowSamples) / tiles.hop);
    return powerBetween(shape, seen, own, b, tiles.frames, from, to) * tiles.hop * gain;
  });
}

/** Sum over the frames of a band from … to that the event holds. */
function powerBetween(
  { span, course, spectrum }: EventShape,
  seen: Float64Array,
  own: Uint8Array,
  b: number,
  frames: number,
  from: number,
  to: number,
): number {
  const end = Math.min(span.to, to);
  let sum = 0;
  for (let n = Math.max(span.from, from); n < end; n++) {
    const at = b * frames + n;
    sum += own[at] ? (course[n - span.from] ?? 0) * (spectrum[b] ?? 0) : (seen[at] ?? 0);
  }
  return sum;
}
