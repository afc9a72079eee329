import { quantile, type Row } from './table';

/** Standard errors a figure of a few rooms may lie beyond what holds of all rooms. */
const errors = 2;

/**
 * A row of a quantile of errors that must not exceed its limit in all rooms: it fails when so many
 * of these cases are beyond the limit as chance alone would hardly bring there (binomial; two
 * standard errors). NaN, from no cases, is beyond every limit.
 */
export function quantileAtMost(
  what: string,
  values: readonly number[],
  share: number,
  limit: number,
  show: (value: number) => string,
): Row {
  return {
    what,
    ours: show(quantile(values, share)),
    prototype: '',
    limit: `≤ ${show(limit)}`,
    within: isQuantileWithin(values, share, limit),
  };
}

/** Whether no more of the values lie beyond the limit than chance may bring there. */
export function isQuantileWithin(values: readonly number[], share: number, limit: number): boolean {
  const beyond = values.filter((value) => !(value <= limit)).length / values.length;
  return beyond <= 1 - share + errors * standardError(share, values.length);
}

/** A row of a share that must reach its limit in all rooms, with the same allowance. */
export function shareAtLeast(
  what: string,
  hits: number,
  count: number,
  limit: number,
  show: (value: number) => string,
): Row {
  const share = hits / count;
  const within = share >= limit - errors * standardError(limit, count);
  return { what, ours: show(share), prototype: '', limit: `≥ ${show(limit)}`, within };
}

function standardError(share: number, count: number): number {
  return Math.sqrt((share * (1 - share)) / count);
}
