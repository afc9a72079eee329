import { msg, str } from '@lit/localize';
import type { GroupProposal } from '../../src/proposal/proposal';
import type { GroupId, Layout } from '../../src/system/channel';
import { proposedHz } from '../../src/workbench/try-settings';
import { hzText } from '../../src/locale/number-text';

interface GroupWords {
  /** For pickers and table heads. */
  readonly name: string;
  /** As the subject of a sentence, and whether its verb takes an s. */
  readonly subject: string;
  readonly single: boolean;
}

const words: Readonly<Record<GroupId, GroupWords>> = {
  fronts: {
    get name() {
      return msg('Fronts');
    },
    get subject() {
      return msg('the fronts');
    },
    single: false,
  },
  centre: {
    get name() {
      return msg('Centre');
    },
    get subject() {
      return msg('the centre');
    },
    single: true,
  },
  wides: {
    get name() {
      return msg('Wides');
    },
    get subject() {
      return msg('the wides');
    },
    single: false,
  },
  sides: {
    get name() {
      return msg('Side surrounds');
    },
    get subject() {
      return msg('the side surrounds');
    },
    single: false,
  },
  backs: {
    get name() {
      return msg('Back surrounds');
    },
    get subject() {
      return msg('the back surrounds');
    },
    single: false,
  },
  'front heights': {
    get name() {
      return msg('Front heights');
    },
    get subject() {
      return msg('the front heights');
    },
    single: false,
  },
  'middle heights': {
    get name() {
      return msg('Middle heights');
    },
    get subject() {
      return msg('the middle heights');
    },
    single: false,
  },
  'back heights': {
    get name() {
      return msg('Back heights');
    },
    get subject() {
      return msg('the back heights');
    },
    single: false,
  },
  subs: {
    get name() {
      return msg('Subs');
    },
    get subject() {
      return msg('the subs');
    },
    single: false,
  },
};

/** A group's plain name; surrounds need no side when there are no others. */
export function groupName(group: GroupId, layout: Layout): string {
  return isOnlySurround(group, layout) ? msg('Surrounds') : words[group].name;
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
  const subject = isOnlySurround(group, layout) ? msg('the surrounds') : words[group].subject;
  const start = single ? capital(subject) : groupName(group, layout);
  const verb = (plural: string, singular: string) => (single ? singular : plural);
  if (inForceHz !== proposedHz(proposal)) {
    const hz = proposedHz(proposal);
    const rest = hz === null ? msg('none is proposed') : msg(str`${hzText(hz)} is proposed`);
    const set = inForceHz === null ? msg('full range') : msg(str`to ${hzText(inForceHz)}`);
    return msg(str`${start} ${verb(msg('are'), msg('is'))} set ${set}; ${rest}`);
  }
  if (!layout.channels.some(({ kind }) => kind === 'sub') && inForceHz === null) {
    return msg(str`${start} ${verb(msg('run'), msg('runs'))} full range: there is no sub`);
  }
  if (crossoverHz === null) return msg(str`No step of the processor suits ${subject}`);
  if (decidedBy === null) {
    return msg(
      str`Where ${subject} ${verb(msg('roll'), msg('rolls'))} off cannot be told; ${hzText(crossoverHz)} is only practice`,
    );
  }
  return msg(str`${start} ${verb(msg('cross'), msg('crosses'))} over at ${hzText(crossoverHz)}`);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
