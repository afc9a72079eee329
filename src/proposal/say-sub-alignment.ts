import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { NoAlignment, SubAlignment } from '../../dsp/bass/align-sub';
import { sayHz, sayNumber, startSentence } from './phrases';

/**
 * What was found of a sub against its mains about a crossover, in words: delay, polarity, what is
 * lost and was lost, how sure it is, and where that is not told or doubted the one thing to do.
 */
export function saySubAlignment(
  name: string,
  crossoverHz: number,
  found: SubAlignment | NoAlignment,
): string {
  if (found.kind === 'cannot tell') return sayWhyNot(name, crossoverHz, found);
  const { delaySeconds, inverted, interval, lossDb, wired, unchanged, doubt } = found;
  const spread = interval
    ? msg(str` (90 % between ${sayMs(interval[0])} and ${withUnit(sayMs(interval[1]), 'ms')})`)
    : '';
  const against = delaySeconds < 0 ? msg('earlier') : msg('later');
  const turned = inverted ? msg('its polarity turned over') : msg('its polarity as it is');
  const lost = msg(
    str`${withUnit(sayNumber(lossDb, 1), 'dB')} of the energy about ${sayHz(crossoverHz)} is lost`,
  );
  return [
    unchanged
      ? msg(str`${startSentence(name)} stays as it is set: ${lost}, and no other delay loses less.`)
      : msg(
          str`${startSentence(name)} ${withUnit(sayMs(Math.abs(delaySeconds)), 'ms')} ${against}${spread}, ${turned}: ${lost}, ${withUnit(sayNumber(wired.lossDb, 1), 'dB')} as it is set now.`,
        ),
    ...(wired.lossDb < lossDb
      ? [
          msg(
            'As it is set now less is lost, but by more than a period of the crossover the direct sounds do not come together.',
          ),
        ]
      : []),
    ...(inverted ? [msg('This says nothing of how the sub is wired.')] : []),
    ...(doubt === null ? [] : [doubts[doubt]]),
  ].join(' ');
}

const doubts = {
  get 'few seats'() {
    return msg('It rests on fewer than three seats: measure more seats.');
  },
  get 'another delay'() {
    return msg('With one seat less another delay would be chosen: measure more seats.');
  },
} as const;

function sayWhyNot(name: string, crossoverHz: number, { why, quieter }: NoAlignment): string {
  const start = msg(str`No delay can be told for ${name}:`);
  if (why === 'noise') {
    return msg(
      str`${start} the noise hides the phase about ${sayHz(crossoverHz)}. Measure again 10 dB louder.`,
    );
  }
  const side =
    quieter === 'sub'
      ? msg(`it is more than 20 dB quieter than the mains`)
      : msg(`the mains are more than 20 dB quieter than it`);
  return msg(
    str`${start} about ${sayHz(crossoverHz)} ${side}, so that no delay matters. Set the levels first.`,
  );
}

function sayMs(seconds: number): string {
  return sayNumber(1000 * seconds, 1);
}
