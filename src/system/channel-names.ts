import { msg } from '@lit/localize';
import type { ChannelLabel, GroupId } from './channel';

interface Naming {
  readonly name: string;
  readonly group: GroupId;
}

const namings: Readonly<Record<ChannelLabel, Naming>> = {
  FL: {
    get name() {
      return msg('front left');
    },
    group: 'fronts',
  },
  FR: {
    get name() {
      return msg('front right');
    },
    group: 'fronts',
  },
  FC: {
    get name() {
      return msg('front centre');
    },
    group: 'centre',
  },
  SiL: {
    get name() {
      return msg('side left');
    },
    group: 'sides',
  },
  SiR: {
    get name() {
      return msg('side right');
    },
    group: 'sides',
  },
  BL: {
    get name() {
      return msg('back left');
    },
    group: 'backs',
  },
  BR: {
    get name() {
      return msg('back right');
    },
    group: 'backs',
  },
  FLw: {
    get name() {
      return msg('front wide left');
    },
    group: 'wides',
  },
  FRw: {
    get name() {
      return msg('front wide right');
    },
    group: 'wides',
  },
  TpFL: {
    get name() {
      return msg('top front left');
    },
    group: 'front heights',
  },
  TpFR: {
    get name() {
      return msg('top front right');
    },
    group: 'front heights',
  },
  TpSiL: {
    get name() {
      return msg('top side left');
    },
    group: 'middle heights',
  },
  TpSiR: {
    get name() {
      return msg('top side right');
    },
    group: 'middle heights',
  },
  TpBL: {
    get name() {
      return msg('top back left');
    },
    group: 'back heights',
  },
  TpBR: {
    get name() {
      return msg('top back right');
    },
    group: 'back heights',
  },
  'Sub 1': {
    get name() {
      return msg('subwoofer 1');
    },
    group: 'subs',
  },
  'Sub 2': {
    get name() {
      return msg('subwoofer 2');
    },
    group: 'subs',
  },
  'Sub 3': {
    get name() {
      return msg('subwoofer 3');
    },
    group: 'subs',
  },
  'Sub 4': {
    get name() {
      return msg('subwoofer 4');
    },
    group: 'subs',
  },
};

/** Plain name of a channel, such as "side left". */
export function channelName(label: ChannelLabel): string {
  return namings[label].name;
}

/** The group whose crossover the channel shares. */
export function channelGroup(label: ChannelLabel): GroupId {
  return namings[label].group;
}

/** Bed, height or sub. */
export function channelKind(label: ChannelLabel): 'bed' | 'height' | 'sub' {
  const group = channelGroup(label);
  if (group === 'subs') return 'sub';
  return group.endsWith('heights') ? 'height' : 'bed';
}

/** Whether a channel is a sub. */
export function isSub(label: ChannelLabel): boolean {
  return channelKind(label) === 'sub';
}
