import { squared } from './complex';
import type { HighPassResponse } from './box-response';

/**
 * Highest frequency at which a high-pass, coming down from its passband, has fallen by `db` below
 * the passband (0 dB): f3, f6, f10 for db = 3.0103…, 6, 10. Peaks above it do not matter.
 * Searched from `fromHz` down to `toHz` in 1/48 octave, then bisected; null when it never falls
 * that far, or is already below at `fromHz`. `db` > 0 and 0 < toHz < fromHz, RangeError otherwise.
 */
export function crossingHz(
  response: HighPassResponse,
  db: number,
  fromHz = 2000,
  toHz = 1,
): number | null {
  if (!(db > 0)) throw new RangeError(`db must be positive, got ${db}`);
  if (!(toHz > 0 && fromHz > toHz)) {
    throw new RangeError(`toHz must lie between 0 and fromHz ${fromHz}, got ${toHz}`);
  }
  const target = 10 ** (-db / 10);
  const below = (hz: number): boolean => squared(response(hz)) < target;
  if (below(fromHz)) return null;
  const step = 2 ** (-1 / 48);
  let high = fromHz;
  while (high > toHz) {
    let low = Math.max(high * step, toHz);
    if (!below(low)) {
      high = low;
      continue;
    }
    for (let i = 0; i < 40; i++) {
      const middle = Math.sqrt(low * high);
      if (below(middle)) low = middle;
      else high = middle;
    }
    return Math.sqrt(low * high);
  }
  return null;
}
