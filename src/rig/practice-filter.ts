import type { Complex } from '../../dsp/room/section';
import type { FilterKind } from '../system/sheet/processor-sheet';

/** A filter of a simulated processor. */
export interface PracticeFilter extends FilterKind {
  readonly kind: 'low-pass' | 'high-pass';
  readonly hz: number;
}

/**
 * Response at a frequency above 0, by its poles e^(iπ(2k + n − 1)/2n): Π −p/(s − p) with s = if/hz,
 * of a high-pass hz/if; a Linkwitz-Riley is a Butterworth of half its order twice.
 * Source: Butterworth (1930); Linkwitz, JAES 24 (1976).
 */
export function practiceFilter({ family, order, kind, hz }: PracticeFilter, atHz: number): Complex {
  const isTwice = family === 'Linkwitz-Riley';
  const poles = isTwice ? order / 2 : order;
  const s = kind === 'low-pass' ? atHz / hz : -hz / atHz;
  let [re, im] = [1, 0];
  for (let k = 1; k <= poles; k++) {
    const angle = (Math.PI * (2 * k + poles - 1)) / (2 * poles);
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    // −p/(is − p), with is − p = −x + i(s − y).
    const [a, b] = [-x, s - y];
    const size = a * a + b * b;
    const factorRe = (-x * a - y * b) / size;
    const factorIm = (x * b - y * a) / size;
    [re, im] = [re * factorRe - im * factorIm, re * factorIm + im * factorRe];
  }
  return isTwice ? [re * re - im * im, 2 * re * im] : [re, im];
}
