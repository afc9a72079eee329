/** One-sided: chance has noise exceed it once in 30,000 bands. */
const standardDeviations = 4;
/** The noise itself is known from a second or two. */
const caution = 1.3;

/**
 * How far over its mean power a band must be heard so that noise alone is not taken for sound.
 * `products` is the band's width times the seconds it is heard, at least 1: noise power in it is
 * gamma distributed of that order. Source: Wilson and Hilferty, PNAS 17 (1931), cube-root form.
 */
export function surelyOver(products: number): number {
  const order = Math.max(products, 1);
  const root = 1 - 1 / (9 * order) + standardDeviations / (3 * Math.sqrt(order));
  return caution * root ** 3;
}
