import type { ChannelLabel, GroupId } from './channel';

interface Naming {
  readonly name: string;
  readonly group: GroupId;
}

const namings: Readonly<Record<ChannelLabel, Naming>> = {
  FL: { name: 'front left', group: 'fronts' },
  FR: { name: 'front right', group: 'fronts' },
  FC: { name: 'front centre', group: 'centre' },
  SiL: { name: 'side left', group: 'sides' },
  SiR: { name: 'side right', group: 'sides' },
  BL: { name: 'back left', group: 'backs' },
  BR: { name: 'back right', group: 'backs' },
  FLw: { name: 'front wide left', group: 'wides' },
  FRw: { name: 'front wide right', group: 'wides' },
  TpFL: { name: 'top front left', group: 'front heights' },
  TpFR: { name: 'top front right', group: 'front heights' },
  TpSiL: { name: 'top side left', group: 'middle heights' },
  TpSiR: { name: 'top side right', group: 'middle heights' },
  TpBL: { name: 'top back left', group: 'back heights' },
  TpBR: { name: 'top back right', group: 'back heights' },
  'Sub 1': { name: 'subwoofer 1', group: 'subs' },
  'Sub 2': { name: 'subwoofer 2', group: 'subs' },
  'Sub 3': { name: 'subwoofer 3', group: 'subs' },
  'Sub 4': { name: 'subwoofer 4', group: 'subs' },
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
