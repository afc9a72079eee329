import { trimmedText } from '../locale/number-text';
import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { isRefusal, type RolloffFit, type RolloffRefusal } from '../../dsp/rolloff/fit-rolloff';
import type { RolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { clearFromHz, divisibleHz, type FilterInForce } from './take-out-filter';

/** What a high-pass in force leaves of a roll-off. */
export interface ThroughHighPass {
  readonly withheld: boolean;
  readonly note: string;
}

/** An f6 that reaches so far below what can be used, and is known no better, rests on nothing. */
const reachBelow = 2;
const widestSpread = 6;

const advice = () => msg('Set it to full range for a moment and repeat it.');

/**
 * From where up bands that a high-pass in force was divided out of can be used, Hz: where noise is
 * not lifted and no sub plays along. Infinity when nowhere.
 */
function clearThroughHz(filter: FilterInForce, bands: RolloffBands): number {
  return Math.max(divisibleHz(filter)[0], clearFromHz(bands, filter.spec.cutoffHz));
}

/**
 * Whether a roll-off can be told through a high-pass in force, from bands it was divided out of:
 * only when its f6 lies where noise is not lifted and no sub plays along. Common practice.
 */
export function judgeThrough(
  filter: FilterInForce,
  bands: RolloffBands,
  fit: RolloffFit | RolloffRefusal,
): ThroughHighPass {
  const inForce = msg(
    str`the crossover in force (${withUnit(trimmedText(filter.spec.cutoffHz, 1), 'Hz')})`,
  );
  const [fromHz] = divisibleHz(filter);
  const clearHz = clearThroughHz(filter, bands);
  const from = withUnit(numberText(clearHz, 0), 'Hz');
  if (isRefusal(fit) || clearHz === Infinity) {
    const note = msg(
      str`No roll-off: ${inForce} leaves too little of the bass to tell it. ${advice()}`,
    );
    return { withheld: true, note };
  }
  const subsPlay = filter.bassOnSubs !== null && clearHz === fromHz;
  const { low, median, high } = fit.f6Hz;
  const isGuess = low < clearHz / reachBelow && high > widestSpread * low;
  if (median < clearHz || isGuess) {
    const why = subsPlay
      ? msg(str`the subs play this speaker's bass below ${from}, because of ${inForce}`)
      : msg(str`${inForce} leaves only noise below ${from}`);
    const note = msg(
      str`No roll-off: ${why}, and above that nothing tells where it rolls off. ${advice()}`,
    );
    return { withheld: true, note };
  }
  const below = subsPlay ? msg('; below that the subs play along') : '';
  const note = msg(
    str`The crossover in force (${withUnit(trimmedText(filter.spec.cutoffHz, 1), 'Hz')}) is divided out: the roll-off is to be trusted from ${from} up${below}.`,
  );
  return { withheld: false, note };
}
