import { msg, str } from '@lit/localize';
import type { ProofLine } from '../../src/proof/proof';
import { intervalText, signedText, thinSpace } from '../../src/locale/number-text';

/**
 * The number a claim was judged by, beside what is allowed; where the sentence of a line that cannot
 * be told says its interval already, what is allowed alone. Null where no number was judged or the
 * line holds.
 */
export function figureText({
  claim,
  verdict,
  figure,
}: Pick<ProofLine, 'claim' | 'verdict' | 'figure'>): string | null {
  if (verdict === 'pass' || !figure) return null;
  const { value, interval, allowed, unit } = figure;
  const digits = unit === 'ms' ? 2 : 1;
  const held = `${intervalText(allowed, digits)}${thinSpace}${unit}`;
  if (verdict === 'cannot tell' && claim !== 'response') return msg(str`Allowed ${held}.`);
  const read = `${signedText(value, digits)}${thinSpace}${unit} (${intervalText(interval, digits)})`;
  return msg(str`${read}; allowed ${held}.`);
}
