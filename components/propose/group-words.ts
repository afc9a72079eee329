import type { GroupProposal } from '../../src/proposal/proposal';
import type { GroupId, Layout } from '../../src/system/channel';
import { proposedHz } from '../../src/workbench/try-settings';
import { hzText } from '../charts/number-text';

interface GroupWords {
  /** For pickers and table heads. */
  readonly name: string;
  /** As the subject of a sentence, and whether its verb takes an s. */
  readonly subject: string;
  readonly single: boolean;
}

const words: Readonly<Record<GroupId, GroupWords>> = {
  fronts: { name: 'Fronts', subject: 'the fronts', single: false },
  centre: { name: 'Centre', subject: 'the centre', single: true },
  wides: { name: 'Wides', subject: 'the wides', single: false },
  sides: { name: 'Side surrounds', subject: 'the side surrounds', single: false },
  backs: { name: 'Back surrounds', subject: 'the back surrounds', single: false },
  'front heights': { name: 'Front heights', subject: 'the front heights', single: false },
  'middle heights': { name: 'Middle heights', subject: 'the middle heights', single: false },
  'back heights': { name: 'Back heights', subject: 'the back heights', single: false },
  subs: { name: 'Subs', subject: 'the subs', single: false },
};

/** A group's plain name; surrounds need no side when there are no others. */
export function groupName(group: GroupId, layout: Layout): string {
  return isOnlySurround(group, layout) ? 'Surrounds' : words[group].name;
}

function isOnlySurround(group: GroupId, layout: Layout): boolean {
  return group === 'sides' && !layout.channels.some((channel) => channel.group === 'backs');
}

/** What was found for a group, with its setting in force, as a sentence without its full stop. */
export function groupFinding(
  proposal: GroupProposal,
  inForceHz: number | null,
  layout: Layout,
): string {
  const { group, crossoverHz, decidedBy } = proposal;
  const { single } = words[group];
  const subject = isOnlySurround(group, layout) ? 'the surrounds' : words[group].subject;
  const start = single ? capital(subject) : groupName(group, layout);
  const verb = (plural: string, singular: string) => (single ? singular : plural);
  if (inForceHz !== proposedHz(proposal)) {
    const hz = proposedHz(proposal);
    const rest = hz === null ? 'none is proposed' : `${hzText(hz)} is proposed`;
    const set = inForceHz === null ? 'full range' : `to ${hzText(inForceHz)}`;
    return `${start} ${verb('are', 'is')} set ${set}; ${rest}`;
  }
  if (!layout.channels.some(({ kind }) => kind === 'sub') && inForceHz === null) {
    return `${start} ${verb('run', 'runs')} full range: there is no sub`;
  }
  if (crossoverHz === null) return `No step of the processor suits ${subject}`;
  if (decidedBy === null) {
    return `Where ${subject} ${verb('roll', 'rolls')} off cannot be told; ${hzText(crossoverHz)} is only practice`;
  }
  return `${start} ${verb('cross', 'crosses')} over at ${hzText(crossoverHz)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
