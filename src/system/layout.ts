import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { Channel, ChannelLabel, Layout } from './channel';
import { speakerBits } from './channel-mask';
import { channelGroup, channelKind, channelName, isSub } from './channel-names';
import { partnerOf } from './partner-label';
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

const howNamesRead = () =>
  msg(
    'A name reads bed.subs.heights: 2 to 9 speakers at ear height, 0 to 4 subs, and 0, 2, 4 or 6 ',
  ) + msg('heights, such as 5.1, 7.2.4 or 9.4.6; or it lists the speakers, such as FL FR FC Sub1.');

/** The choices a layout is made of, smallest first. */
export const layoutChoices = {
  beds: Object.keys(beds).map(Number),
  subs: [0, 1, 2, 3, 4],
  heights: Object.keys(heightSets).map(Number),
} as const;

/**
 * The loudspeakers a name stands for, in the order of the take's WAV channels: bed.subs.heights, or
 * a list of labels for a system that no such name stands for. A trouble of kind 'bad-layout' when
 * the name means nothing or the list is no system. "5.1.0" is read as "5.1".
 */
export function layoutFromName(name: string): Layout | Trouble {
  const text = name.trim();
  const words = wordsOf(text);
  if (words.some((word) => labelOf(word))) return layoutFromList(text, words);
  const match = /^(\d+)\.(\d+)(?:\.(\d+))?$/.exec(text);
  if (!match) return refuse(name, msg('it is not two or three whole numbers with dots between.'));
  const bed = Number(match[1]);
  const subs = Number(match[2]);
  const heights = Number(match[3] ?? 0);
  const bedLabels = beds[bed];
  const heightLabels = heightSets[heights];
  if (!bedLabels) return refuse(name, msg(str`there is no bed of ${bed}.`));
  if (subs > subLabels.length)
    return refuse(name, msg(str`there can be 0 to 4 subs, not ${subs}.`));
  if (!heightLabels)
    return refuse(name, msg(str`there can be 0, 2, 4 or 6 heights, not ${heights}.`));
  return layoutOf([...bedLabels, ...subLabels.slice(0, subs), ...heightLabels]);
}

/** Labels with spaces or commas between; subs may stand as "Sub 1" or "Sub1". */
function wordsOf(text: string): string[] {
  const joined = text.replace(/\bsub\s+(?=\d)/gi, 'Sub');
  return joined.split(/[\s,]+/).filter((word) => word !== '');
}

function labelOf(word: string): ChannelLabel | undefined {
  return layoutOrder.find((one) => compact(one).toLowerCase() === word.toLowerCase());
}

function layoutFromList(text: string, words: readonly string[]): Layout | Trouble {
  const labels: ChannelLabel[] = [];
  for (const word of words) {
    const label = labelOf(word);
    if (!label) return refuse(text, msg(str`“${word.slice(0, 20)}” is no loudspeaker.`));
    if (labels.includes(label)) return refuse(text, msg(str`it names ${label} twice.`));
    labels.push(label);
  }
  const wrong = whyNoSystem(labels);
  return wrong === null ? layoutOf(labels) : refuse(text, wrong);
}

/** Why a set of loudspeakers is no system, as the end of a sentence; null when it is one. */
export function whyNoSystem(labels: readonly ChannelLabel[]): string | null {
  const has = (label: ChannelLabel): boolean => labels.includes(label);
  if (!has('FL') || !has('FR')) return msg('it has no front left and front right.');
  const single = labels.find((label) => !has(partnerOf(label)));
  if (single)
    return msg(str`${single} stands there without ${partnerOf(single)}: they come in pairs.`);
  if (has('BL') && !has('SiL')) {
    return msg(
      'it has back surrounds and no side surrounds: a single pair of surrounds is the side pair, wherever it stands.',
    );
  }
  const subs = labels.filter(isSub);
  const missing = subLabels.slice(0, subs.length).find((label) => !has(label));
  return missing ? msg(str`its subs are not counted from 1 on: ${missing} is missing.`) : null;
}

/** The layout of these loudspeakers, which must be a system; see whyNoSystem. */
export function layoutOf(speakers: readonly ChannelLabel[]): Layout {
  const labels = layoutOrder.filter((label) => speakers.includes(label));
  const count = (kind: string): number =>
    labels.filter((label) => channelKind(label) === kind).length;
  const [bed, subs, heights] = [count('bed'), count('sub'), count('height')];
  const title = heights === 0 ? `${bed}.${subs}` : `${bed}.${subs}.${heights}`;
  const usual = [...(beds[bed] ?? []), ...subLabels.slice(0, subs), ...(heightSets[heights] ?? [])];
  const isUsual = usual.length === labels.length && usual.every((label) => labels.includes(label));
  return {
    name: isUsual ? title : labels.map(compact).join(' '),
    title,
    channels: labels.map((label) => describeChannel(label, labels.includes('BL'), heights)),
  };
}

/** A label without a space, as it stands in a list. */
function compact(label: ChannelLabel): string {
  return label.replace(' ', '');
}

/** The speaker that plays every mark and to which all times refer: FL, which is always there. */
export function referenceChannel({
  name,
  channels,
}: Pick<Layout, 'name' | 'channels'>): ChannelLabel {
  const found = channels.find((channel) => channel.label === 'FL') ?? channels[0];
  if (!found) throw new RangeError(`a layout has at least one channel, got ${name} with 0`);
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
  return trouble(
    'bad-layout',
    msg(str`“${name.slice(0, 40)}” names no layout: ${why} ${howNamesRead()}`),
  );
}
