import type { FilterSpec } from '../filter/analogue';

/**
 * |H|² of a Butterworth or Linkwitz-Riley filter at `hz`, 0 or more: with w = hz/cutoff, or its
 * inverse for a high-pass, 1/(1 + w^2n), for Linkwitz-Riley of order n 1/(1 + w^n)². Throws
 * RangeError for an order that is not whole, odd for Linkwitz-Riley, or below 1, a cutoff that is
 * not positive, or hz below 0. Source: Butterworth (1930); Linkwitz, JAES 24 (1976).
 */
export function filterPower({ family, kind, order, cutoffHz }: FilterSpec, hz: number): number {
  const paired = family === 'linkwitz-riley';
  if (!Number.isInteger(order) || order < 1 || (paired && order % 2 !== 0)) {
    throw new RangeError(`order must be whole, even for Linkwitz-Riley, got ${order}`);
  }
  if (!(cutoffHz > 0 && cutoffHz < Infinity)) {
    throw new RangeError(`cutoffHz must be positive, got ${cutoffHz}`);
  }
  if (!(hz >= 0 && hz < Infinity)) throw new RangeError(`hz must not be negative, got ${hz}`);
  const w = kind === 'low-pass' ? hz / cutoffHz : cutoffHz / hz;
  return paired ? 1 / (1 + w ** order) ** 2 : 1 / (1 + w ** (2 * order));
}
