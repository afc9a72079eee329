import { msg, str } from '@lit/localize';
import type { ChannelProposal, Proposal } from '../../../src/proposal/proposal';
import type { OtherDelay, SubAlignmentProposal } from '../../../src/proposal/subs-proposal';
import { sayList } from '../../../src/proposal/phrases';
import {
  dbText,
  isNumber,
  millisecondsText,
  numberText,
  thinSpace,
} from '../../../src/locale/number-text';
import type { TitleAndLede } from '../../probe/probe-title';
import type { ProposeView } from '../propose-view';

/** What was found of the subs. */
export function subsTitle({
  proposal,
  coming,
}: Pick<ProposeView, 'proposal' | 'coming'>): TitleAndLede {
  const { subs } = proposal;
  if (!subs) {
    return {
      title: msg('There is no sub'),
      lede: msg('Nobody takes the bass of the mains: every group runs full range.'),
    };
  }
  const many = subs.subs.length > 1;
  const { alignment } = subs;
  if (alignment) {
    const { sum, byArrival, channels } = alignment;
    return {
      title: msg(
        str`${many ? msg('The subs lose') : msg('The sub loses')} ${dbText(sum.lossDb)} with ${sayList(channels)}`,
      ),
      lede: msg(
        str`By arrival alone it would be ${dbText(byArrival.lossDb)}. Less is better; 0 is both in step at every seat.`,
      ),
    };
  }
  if (coming) {
    return {
      title: msg('The subs are being set against the mains'),
      lede: msg('A moment, please.'),
    };
  }
  const missing = proposal.missing.find(({ what }) => what === 'sub alignment');
  return {
    title: msg(str`${many ? msg('The subs go') : msg('The sub goes')} by arrival`),
    lede: missing ? `${missing.sentence} ${missing.action}` : '',
  };
}

/** Another delay in words: how much later, and whether turned over. */
export function delayText({
  laterSeconds,
  turned,
}: Pick<OtherDelay, 'laterSeconds' | 'turned'>): string {
  const how = laterSeconds < 0 ? msg('earlier') : msg('later');
  if (turned && Math.abs(laterSeconds) < 5e-6) return msg('at the same time, turned over');
  return `${millisecondsText(Math.abs(laterSeconds))} ${how}${turned ? msg(', turned over') : ''}`;
}

/** Why a delay that loses less than the proposal, as it is shown, is not proposed; else null. */
export function whyNotProposed(
  { lossDb, fits, farther }: OtherDelay,
  { asProposedLossDb, groups }: Pick<SubAlignmentProposal, 'asProposedLossDb' | 'groups'>,
): string | null {
  if (!fits) return msg('the distances of the processor do not reach that far');
  const less = Math.round(10 * asProposedLossDb) - Math.round(10 * lossDb);
  if (less <= 0) return null;
  if (farther) return msg('loses less, but lies farther from where the direct sounds line up');
  return groups.length > 0
    ? msg('loses less here, more with all groups together')
    : msg('loses less only by how the distances are rounded');
}

/** How sure the delay is, in a sentence. */
export function confidenceText({ toleranceSeconds, interval }: SubAlignmentProposal): string {
  const [early, late] = toleranceSeconds;
  const told =
    late > early
      ? msg(
          str`From ${millisecondsText(-early)} earlier to ${millisecondsText(late)} later costs at most ${dbText(0.1)} more.`,
        )
      : '';
  const [low, high] = interval ?? [null, null];
  const seats =
    isNumber(low) && isNumber(high)
      ? msg(
          str`By how the seats differ, 90${thinSpace}% within ${numberText(1000 * low, 2)} to ${millisecondsText(high)} of it.`,
        )
      : msg('Fewer than three seats: how much the seats differ cannot be told.');
  return [told, seats].filter((text) => text !== '').join(' ');
}

/** Polarity of a sub as it is set. */
export function polarityOf({ subs }: Proposal, channel: string): ChannelProposal['polarity'] {
  return subs?.subs.find((one) => one.channel === channel)?.polarity ?? 'cannot tell';
}
