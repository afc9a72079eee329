import type { BandTiles } from './band-tiles';

/** Frames from … to (exclusive) in which something is heard. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

const gapSeconds = 0.4;
/** Share of the loudest frame from which on one belongs to an event. */
const leastShare = 1e-3;

/**
 * Stretches of time that hold seen excess, weighed per band by `weights`. What is less than 0.4 s
 * apart is one; time in which the take's own sound hides the bands an event is in does not count.
 */
export function findEvents(
  seen: Float64Array,
  hidden: Uint8Array,
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
  let most = 0;
  for (let n = 0; n < frames; n++) most = Math.max(most, activity[n] ?? 0);
  const least = leastShare * most;
  const mostQuiet = (gapSeconds * sampleRate) / hop;
  const profile = new Float64Array(weights.length);
  const spans: Span[] = [];
  let quiet = 0;
  for (let n = 0; n < frames; n++) {
    const last = spans.at(-1);
    if (least <= 0 || (activity[n] ?? 0) < least) {
      if (last) quiet += visibleShare(profile, hidden, frames, n);
      continue;
    }
    if (last && quiet < mostQuiet) spans[spans.length - 1] = { from: last.from, to: n + 1 };
    else {
      profile.fill(0);
      spans.push({ from: n, to: n + 1 });
    }
    quiet = 0;
    for (let b = 0; b < weights.length; b++) {
      profile[b] = (profile[b] ?? 0) + (weights[b] ?? 0) * (seen[b * frames + n] ?? 0);
    }
  }
  return spans;
}

/** Share of an event's profile over the bands that a frame lets see. */
function visibleShare(profile: Float64Array, hidden: Uint8Array, frames: number, n: number) {
  let visible = 0;
  let whole = 0;
  for (let b = 0; b < profile.length; b++) {
    const value = profile[b] ?? 0;
    whole += value;
    if (!hidden[b * frames + n]) visible += value;
  }
  return whole > 0 ? visible / whole : 1;
}
