/** An interval between two marks: what the schedule says and what was captured, in capture samples. */
export interface MarkInterval {
  /** Scheduled length times the ratio of the nominal rates. */
  readonly due: number;
  readonly taken: number;
}

export interface SkewConsensus {
  /** captured = played × (1 + skew); 0 when no interval is plausible. */
  readonly skew: number;
  /** For each interval whether it agrees with that skew. */
  readonly agrees: readonly boolean[];
  /** Other plausible skews with which as many intervals agree. */
  readonly rivals: readonly number[];
}

/** An interval that differs by more has lost or repeated audio; samples at 48 kHz. */
const largestStep = 3;
const largestSkew = 550e-6;
/** A skew of so much counts against a candidate as much as one interval that disagrees. */
const unlikelySkew = 500e-6;

/**
 * The skew with which most intervals agree within three samples (in proportion above 48 kHz), in
 * doubt the smaller one, never above 550 ppm. Unlike the median of the ratios it holds when half
 * of the intervals, or one of two, have lost audio.
 */
export function findConsensus(
  intervals: readonly MarkInterval[],
  sampleRate: number,
): SkewConsensus {
  const tolerance = largestStep * Math.max(1, sampleRate / 48_000);
  const agree = (skew: number) =>
    intervals.map(({ due, taken }) => Math.abs(taken - due * (1 + skew)) <= tolerance);
  let best = { skew: 0, agrees: intervals.map(() => false) };
  const tried: { skew: number; count: number; index: number }[] = [];
  let bestScore = -Infinity;
  for (const [index, { due, taken }] of intervals.entries()) {
    const skew = taken / due - 1;
    if (!(Math.abs(skew) <= largestSkew)) continue;
    const agrees = agree(skew);
    const count = agrees.filter(Boolean).length;
    tried.push({ skew, count, index });
    const score = count - Math.abs(skew) / unlikelySkew;
    if (score <= bestScore) continue;
    bestScore = score;
    best = { skew, agrees };
  }
  let due = 0;
  let taken = 0;
  for (const [k, interval] of intervals.entries()) {
    if (best.agrees[k] !== true) continue;
    due += interval.due;
    taken += interval.taken;
  }
  if (due === 0) return { ...best, rivals: [] };
  const skew = taken / due - 1;
  const agrees = agree(skew);
  const most = best.agrees.filter(Boolean).length;
  const rivals = tried
    .filter(({ count, index }) => count >= most && best.agrees[index] !== true)
    .map((rival) => rival.skew);
  return { skew, agrees, rivals };
}
