import type { BandTiles } from './band-tiles';

/** Frames from … to (exclusive) in which something is heard. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

const gapSeconds = 0.4;
/** Share of the loudest frame from which on one belongs to an event. */
const leastShare = 0.01;

/**
 * Stretches of time that hold seen excess, weighed per band by `weights`; what is less than 0.4 s
 * apart is one.
 */
export function findEvents(
  seen: Float64Array,
  tiles: BandTiles,
  weights: readonly number[],
  sampleRate: number,
): Span[] {
  const { frames, hop } = tiles;
  const activity = new Float64Array(frames);
  for (const [b, weight] of weights.entries()) {
    for (let n = 0; n < frames; n++) {
      activity[n] = (activity[n] ?? 0) + weight * (seen[b * frames + n] ?? 0);
    }
  }
  const most = activity.reduce((max, value) => Math.max(max, value), 0);
  const gap = (gapSeconds * sampleRate) / hop;
  const spans: Span[] = [];
  for (let n = 0; n < frames; n++) {
    if (most <= 0 || (activity[n] ?? 0) < leastShare * most) continue;
    const last = spans.at(-1);
    if (last && n - last.to < gap) spans[spans.length - 1] = { from: last.from, to: n + 1 };
    else spans.push({ from: n, to: n + 1 });
  }
  return spans;
}
