import { logBand } from './log-band';

/** Stretches of 1/6 octave of a part of a grid. */
export interface SixthOctaves {
  /** The grid's frequencies in use. */
  readonly hz: Float64Array;
  /** First entry of the grid in use. */
  readonly first: number;
  /** First entry of hz in each stretch, and one after the last. */
  readonly edges: readonly number[];
  /** Share of each frequency in its stretch; they sum to 1 in every stretch. */
  readonly shares: Float64Array;
  /** Share of each stretch in the whole, over log f; they sum to 1. */
  readonly weights: Float64Array;
}

/**
 * Cuts the grid from lowHz to highHz into stretches of 1/6 octave, the last ones wider when it does
 * not divide; a stretch that would hold no frequency joins the one before. Throws RangeError as
 * logBand does.
 */
export function sixthOctaves(hz: Float64Array, lowHz: number, highHz: number): SixthOctaves {
  const { first, end, weights } = logBand(hz, lowHz, highHz);
  const used = hz.slice(first, end);
  const count = Math.max(1, Math.floor(6 * Math.log2(highHz / lowHz) + 1e-9));
  const place = (f: number): number =>
    Math.min(
      count - 1,
      Math.floor((count * Math.log(f / lowHz)) / Math.log(highHz / lowHz) + 1e-9),
    );
  const edges = [...used.keys()].filter(
    (k) => k === 0 || place(used[k] ?? 0) > place(used[k - 1] ?? 0),
  );
  edges.push(used.length);
  const shares = weights.slice();
  const totals = new Float64Array(edges.length - 1);
  for (let band = 0; band < totals.length; band++) {
    const own = shares.subarray(edges[band], edges[band + 1]);
    const total = own.reduce((sum, weight) => sum + weight, 0);
    totals[band] = total;
    for (let k = 0; k < own.length; k++) own[k] = (own[k] ?? 0) / total;
  }
  return { hz: used, first, edges, shares, weights: totals };
}
