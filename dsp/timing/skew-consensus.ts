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
/** One skew is clear if a judge values it so much more than the next; large ones are unusual. */
const clearValue = 0.3;
const usualSkew = 200e-6;

/**
 * The skew with which most intervals agree within three samples (in proportion above 48 kHz), in
 * doubt the smaller one, unless `judge` values another much more; never above 550 ppm. Unlike the median of the ratios it holds when half of the intervals, or one of two,
 * have lost audio.
 */
export function findConsensus(
  intervals: readonly MarkInterval[],
  sampleRate: number,
  judge?: (skew: number) => number,
): SkewConsensus {
  const tolerance = largestStep * Math.max(1, sampleRate / 48_000);
  const agree = (skew: number) =>
    intervals.map(({ due, taken }) => Math.abs(taken - due * (1 + skew)) <= tolerance);
  const tried = intervals.flatMap(({ due, taken }) => {
    const skew = taken / due - 1;
    if (!(Math.abs(skew) <= largestSkew)) return [];
    const agrees = agree(skew);
    return [{ skew, agrees, count: agrees.filter(Boolean).length }];
  });
  const most = Math.max(0, ...tried.map(({ count }) => count));
  const sets = new Map<string, { skew: number; agrees: boolean[] }>();
  for (const { skew, agrees, count } of tried) {
    if (count === most && !sets.has(agrees.join())) sets.set(agrees.join(), { skew, agrees });
  }
  const valued = [...sets.values()]
    .map((set) => {
      const usual = -0.5 * (set.skew / usualSkew) ** 2;
      const value = judge && sets.size > 1 ? judge(set.skew) + usual : usual;
      return { ...set, value };
    })
    .sort((a, b) => b.value - a.value);
  const best = valued[0];
  if (!best) return { skew: 0, agrees: intervals.map(() => false), rivals: [] };
  let due = 0;
  let taken = 0;
  for (const [k, interval] of intervals.entries()) {
    if (best.agrees[k] !== true) continue;
    due += interval.due;
    taken += interval.taken;
  }
  const skew = taken / due - 1;
  const rest = valued.slice(1);
  const clear = judge !== undefined && best.value - (rest[0]?.value ?? 0) > clearValue;
  return { skew, agrees: agree(skew), rivals: clear ? [] : rest.map((rival) => rival.skew) };
}
