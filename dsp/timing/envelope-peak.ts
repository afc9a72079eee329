/** Vertex of the parabola through an entry and its neighbours, at most half an entry away. */
export function refinePeak(values: Float64Array, at: number): number {
  const before = values[at - 1] ?? 0;
  const here = values[at] ?? 0;
  const after = values[at + 1] ?? 0;
  const bend = before - 2 * here + after;
  if (!(bend < 0)) return at;
  return at + Math.min(0.5, Math.max(-0.5, (before - after) / (2 * bend)));
}

/** Whether an entry exceeds the next one and is no less than the one before. */
export function isPeak(values: Float64Array, at: number): boolean {
  const here = values[at] ?? 0;
  return here >= (values[at - 1] ?? 0) && here > (values[at + 1] ?? 0);
}

/**
 * First local maximum from `from` on that reaches `least` and is at least `share` of the largest
 * value in the `reach` entries after it, so no shoulder of what follows; `strongest` if none is.
 */
export function firstPeak(
  envelope: Float64Array,
  from: number,
  strongest: number,
  least: number,
  share: number,
  reach: number,
): number {
  for (let n = Math.max(1, from); n < strongest; n++) {
    if ((envelope[n] ?? 0) < least || !isPeak(envelope, n)) continue;
    let next = 0;
    for (let k = n; k <= n + reach; k++) next = Math.max(next, envelope[k] ?? 0);
    if ((envelope[n] ?? 0) >= share * next) return n;
  }
  return strongest;
}

/** First place from `from` on where the envelope rises through `level`, fractional. */
export function firstCrossing(
  envelope: Float64Array,
  from: number,
  strongest: number,
  level: number,
): number {
  for (let n = Math.max(1, from); n <= strongest; n++) {
    const here = envelope[n] ?? 0;
    const before = envelope[n - 1] ?? 0;
    if (here >= level) return before < level ? n - (here - level) / (here - before) : n;
  }
  return strongest;
}

/** Index of the largest magnitude. */
export function largestIndex(values: Float64Array): number {
  let best = 0;
  let most = 0;
  for (let n = 0; n < values.length; n++) {
    const size = Math.abs(values[n] ?? 0);
    if (size > most) {
      most = size;
      best = n;
    }
  }
  return best;
}
