import { msg, str } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { ChannelLabel, GroupId, Layout } from './channel';
import { channelGroup, channelName } from './channel-names';
import { layoutFromName, layoutOf, layoutOrder, whyNoSystem } from './layout';
import { listInWords } from './list-in-words';

/** Groups that can be there or not; fronts always are, subs are counted. */
export type DeclarableGroup = Exclude<GroupId, 'fronts' | 'subs'>;

export const declarableGroups: readonly DeclarableGroup[] = [
  'centre',
  'sides',
  'backs',
  'wides',
  'front heights',
  'middle heights',
  'back heights',
];

/** The loudspeakers of a group, in the order of a take's channels. */
export function labelsOf(group: GroupId): readonly ChannelLabel[] {
  return layoutOrder.filter((label) => channelGroup(label) === group);
}

/** Whether a layout has a group's loudspeakers. */
export function hasGroup(layout: Layout, group: GroupId): boolean {
  return layout.channels.some((channel) => channel.group === group);
}

/**
 * The layout with a group's speakers as well, at nominal angles; its name is what the bench takes.
 * A trouble of kind 'bad-layout' when they would make no system. Adding what is there changes
 * nothing.
 */
export function addGroup(layout: Layout, group: DeclarableGroup): Layout | Trouble {
  return withSpeakers(
    layout,
    [...namesIn(layout), ...labelsOf(group)],
    msg(str`${named(group)} do not fit`),
  );
}

/** The layout without a group's speakers; otherwise like addGroup. */
export function removeGroup(layout: Layout, group: DeclarableGroup): Layout | Trouble {
  const gone = labelsOf(group);
  const rest = namesIn(layout).filter((label) => !gone.includes(label));
  return withSpeakers(layout, rest, msg(str`${named(group)} stay`));
}

/** The layout with 0 to 4 subs, counted from Sub 1; a trouble for any other number. */
export function setSubs(layout: Layout, count: number): Layout | Trouble {
  const subs = labelsOf('subs');
  if (!Number.isInteger(count) || count < 0 || count > subs.length) {
    return trouble(
      'bad-layout',
      msg(
        str`There can be 0 to ${subs.length} subs, not ${count}; the layout stays ${layout.title}.`,
      ),
    );
  }
  const others = namesIn(layout).filter((label) => channelGroup(label) !== 'subs');
  return withSpeakers(
    layout,
    [...others, ...subs.slice(0, count)],
    msg(str`${count} subs do not fit`),
  );
}

/**
 * How a layout differs from the one its title usually stands for, such as "with TpSiL and TpSiR
 * instead of TpFL and TpFR"; null when it does not.
 */
export function layoutDeviation(layout: Layout): string | null {
  const usual = layoutFromName(layout.title);
  if (isTrouble(usual)) return null;
  const [here, there] = [namesIn(layout), namesIn(usual)];
  const extra = here.filter((label) => !there.includes(label));
  const missing = there.filter((label) => !here.includes(label));
  if (extra.length === 0) return null;
  return msg(str`with ${listInWords(extra)} instead of ${listInWords(missing)}`);
}

function namesIn(layout: Layout): ChannelLabel[] {
  return layout.channels.map(({ label }) => label);
}

function withSpeakers(
  layout: Layout,
  labels: readonly ChannelLabel[],
  refusal: string,
): Layout | Trouble {
  const wrong = whyWrong(labels);
  if (wrong === null) return layoutOf(labels);
  return trouble('bad-layout', msg(str`${refusal}: ${wrong} The layout stays ${layout.title}.`));
}

/** Backs without sides are what a tuner comes upon; the rest is said as for a typed list. */
function whyWrong(labels: readonly ChannelLabel[]): string | null {
  if (labels.includes('BL') && !labels.includes('SiL')) {
    return msg('a lone pair of surrounds is the side pair, even when it stands behind the seat.');
  }
  return whyNoSystem(labels);
}

function named(group: DeclarableGroup): string {
  const text = labelsOf(group).map(channelName);
  return `${listInWords(labelsOf(group))} (${listInWords(text)})`;
}
