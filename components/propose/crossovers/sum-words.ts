import { msg, str } from '@lit/localize';
import type { PredictedLoss } from '../../../src/proposal/proposal';
import { dbText, hzText } from '../../../src/locale/number-text';

/** What a group and the subs lose together, in a line. */
export function sumText(sum: PredictedLoss | null): string {
  if (!sum) return msg('no sum can be told');
  return msg(
    str`Against both in phase: ${dbText(sum.lossDb)} lost, dip ${dbText(sum.dipDb)} at ${hzText(sum.dipHz)}`,
  );
}
