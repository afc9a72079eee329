import { trouble, type Trouble } from '../trouble';
import type { Channel, ChannelLabel, Layout } from './channel';
import { speakerBits } from './channel-mask';
import { channelGroup, channelKind, channelName } from './channel-names';
import { speakerPlace } from './speaker-places';

const sides: readonly ChannelLabel[] = ['SiL', 'SiR'];
const backs: readonly ChannelLabel[] = ['BL', 'BR'];
const wides: readonly ChannelLabel[] = ['FLw', 'FRw'];

/** Which loudspeakers a bed of so many stands for. */
const beds: Readonly<Record<number, readonly ChannelLabel[]>> = {
  2: ['FL', 'FR'],
  3: ['FL', 'FR', 'FC'],
  4: ['FL', 'FR', ...sides],
  5: ['FL', 'FR', 'FC', ...sides],
  6: ['FL', 'FR', ...sides, ...backs],
  7: ['FL', 'FR', 'FC', ...sides, ...backs],
  8: ['FL', 'FR', ...sides, ...backs, ...wides],
  9: ['FL', 'FR', 'FC', ...sides, ...backs, ...wides],
};

const heightSets: Readonly<Record<number, readonly ChannelLabel[]>> = {
  0: [],
  2: ['TpFL', 'TpFR'],
  4: ['TpFL', 'TpFR', 'TpBL', 'TpBR'],
  6: ['TpFL', 'TpFR', 'TpBL', 'TpBR', 'TpSiL', 'TpSiR'],
};

const subLabels: readonly ChannelLabel[] = ['Sub 1', 'Sub 2', 'Sub 3', 'Sub 4'];

/** Order of a take's WAV channels: by mask bit, then what has none. */
export const layoutOrder: readonly ChannelLabel[] = [
  ...speakerBits.map(([label]) => label),
  'TpSiL',
  'TpSiR',
  'FLw',
  'FRw',
  'Sub 2',
  'Sub 3',
  'Sub 4',
];

const howNamesRead =
  'A name reads bed.subs.heights: 2 to 9 speakers at ear height, 0 to 4 subs, and 0, 2, 4 or 6 ' +
  'heights, such as 5.1, 7.2.4 or 9.4.6.';

/** The choices a layout is made of, smallest first. */
export const layoutChoices = {
  beds: Object.keys(beds).map(Number),
  subs: [0, 1, 2, 3, 4],
  heights: Object.keys(heightSets).map(Number),
} as const;

/**
 * The loudspeakers a layout name stands for, in the order of the take's WAV channels; a trouble of
 * kind 'bad-layout' when the name means nothing. "5.1.0" is read as "5.1".
 */
export function layoutFromName(name: string): Layout | Trouble {
  const match = /^(\d+)\.(\d+)(?:\.(\d+))?$/.exec(name.trim());
  if (!match) return refuse(name, 'it is not two or three whole numbers with dots between.');
  const bed = Number(match[1]);
  const subs = Number(match[2]);
  const heights = Number(match[3] ?? 0);
  const bedLabels = beds[bed];
  const heightLabels = heightSets[heights];
  if (!bedLabels) return refuse(name, `there is no bed of ${bed}.`);
  if (subs > subLabels.length) return refuse(name, `there can be 0 to 4 subs, not ${subs}.`);
  if (!heightLabels) return refuse(name, `there can be 0, 2, 4 or 6 heights, not ${heights}.`);
  const present = new Set([...bedLabels, ...subLabels.slice(0, subs), ...heightLabels]);
  const labels = layoutOrder.filter((label) => present.has(label));
  return {
    name: heights === 0 ? `${bed}.${subs}` : `${bed}.${subs}.${heights}`,
    channels: labels.map((label) => describeChannel(label, present.has('BL'), heights)),
  };
}

/** The speaker that plays every mark and to which all times refer: FL, which is always there. */
export function referenceChannel(layout: Layout): ChannelLabel {
  const found = layout.channels.find((channel) => channel.label === 'FL') ?? layout.channels[0];
  if (!found) throw new RangeError(`a layout has at least one channel, got ${layout.name} with 0`);
  return found.label;
}

function describeChannel(label: ChannelLabel, hasBacks: boolean, heights: number): Channel {
  const place = speakerPlace(label, hasBacks, heights);
  return {
    label,
    name: channelName(label),
    group: channelGroup(label),
    kind: channelKind(label),
    azimuthDegrees: place.azimuth,
    elevationDegrees: place.elevation,
    azimuthRange: place.azimuthRange,
    elevationRange: place.elevationRange,
  };
}

function refuse(name: string, why: string): Trouble {
  return trouble('bad-layout', `“${name.slice(0, 40)}” names no layout: ${why} ${howNamesRead}`);
}
