import type { BenchState } from '../../src/session/bench';
import { ordersTogether } from '../../src/session/orders-together';
import { unreadTogether } from '../../src/session/still-together';
import type { Layout } from '../../src/system/channel';
import { hzText, isNumber } from '../charts/number-text';
import { sayList } from '../../src/proposal/phrases';
import type { TitleAndLede } from '../probe/probe-title';
import { groupFinding } from './group-words';
import type { ProposeView } from './propose-view';

/** The finding for the group in view, and who decides it. */
export function proposeTitle(view: ProposeView, layout: Layout): TitleAndLede {
  const { groupProposal, chosenHz } = view;
  if (!groupProposal) return subsTitle(view);
  const labels = layout.channels
    .filter(({ group }) => group === groupProposal.group)
    .map(({ label }) => label);
  const { decidedBy, crossoverHz } = groupProposal;
  const title = groupFinding(groupProposal, chosenHz, layout);
  if (!layout.channels.some(({ kind }) => kind === 'sub')) {
    return {
      title,
      lede:
        crossoverHz === null
          ? 'Without a sub nothing takes over below the roll-off.'
          : 'Without a sub the fronts take over its bass.',
    };
  }
  if (decidedBy === null) {
    return { title, lede: 'This take gave no roll-off; the notes under Probe say why.' };
  }
  if (crossoverHz === null) {
    return { title, lede: `${decidedBy} rolls off too high even for the highest step.` };
  }
  const { readFrom } = groupProposal;
  if (readFrom && labels.length > 1 && labels.every((label) => readFrom.channels.includes(label))) {
    const lede = `${sayList(labels)} share one setting and are one model, read from ${readFrom.heard}.`;
    return { title, lede };
  }
  const lede =
    labels.length > 1
      ? `${sayList(labels)} share one setting; ${decidedBy} reaches less deep, so it decides.`
      : `${decidedBy} stands alone, so it decides.`;
  return { title, lede };
}

function subsTitle({ members }: ProposeView): TitleAndLede {
  const deepest = members
    .filter(({ rolloff }) => isNumber(rolloff?.f6Hz.median))
    .sort((a, b) => (b.rolloff?.f6Hz.median ?? 0) - (a.rolloff?.f6Hz.median ?? 0))[0];
  const title = deepest
    ? `${members.length > 1 ? 'The subs reach' : 'The sub reaches'} down to ${hzText(deepest.rolloff?.f6Hz.median)}`
    : `How deep the ${members.length > 1 ? 'subs reach' : 'sub reaches'} cannot be told`;
  const lede = deepest
    ? `There ${deepest.channel} is 6\u202fdB down. Their distance and polarity follow from the sum with the other speakers, not from this take.`
    : 'The notes under Probe say why.';
  return { title, lede };
}

/** What is missing before anything can be proposed. */
export function missingTitle(state: BenchState): TitleAndLede {
  const { readings, layout, activity } = state;
  if (activity.kind !== 'idle') {
    return { title: 'A take is running', lede: 'The settings appear once it is read.' };
  }
  if (!readings) {
    return {
      title: 'No settings yet',
      lede: 'They come from measured arrivals, levels and roll-offs. A take under Probe gives all of them.',
    };
  }
  if (readings.layout !== layout.name) {
    return {
      title: `The last take was of ${readings.layout}`,
      lede: `The plan now says ${layout.title}. Run a new take under Probe.`,
    };
  }
  if (unreadTogether(ordersTogether(state.document, layout), state.together).length > 0) {
    return {
      title: 'Roll-offs are being read together',
      lede: 'The settings appear in a moment, from all seats and speakers of one model.',
    };
  }
  return {
    title: 'The settings cannot be worked out',
    lede: 'The processor’s steps or the readings do not fit together. Run the take again under Probe.',
  };
}
