import { trimmedText } from '../locale/number-text';
import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { groupWord } from '../system/group-word';
import type { Channel, ChannelLabel, GroupId, Layout } from '../system/channel';
import {
  isNothingInForce,
  type DeclaredSettings,
  type SettingsInForce,
} from '../system/declared-settings';
import { listInWords } from '../system/list-in-words';
import { noDelay, processorDelays, type ProcessorDelay } from './take-out-delay';
import { filterOf, lowPassDelaySeconds, type FilterInForce } from './take-out-filter';

/** What the processor does to one channel, to be taken out of its readings. */
export interface ChannelInForce {
  /** Null: it cannot be told beside the reference speaker's. */
  readonly delay: ProcessorDelay | null;
  readonly trimDb: number;
  readonly filter: FilterInForce | null;
  /** What stays in the reading all the same, as sentences. */
  readonly notes: readonly string[];
}

/** A channel the processor leaves as it is. */
export const untouched: ChannelInForce = { delay: noDelay, trimDb: 0, filter: null, notes: [] };

/**
 * What is in force on every channel of a take. A speaker whose crossover is in force plays without
 * its bass, which the subs of the layout play meanwhile.
 */
export function channelsInForce(
  layout: Layout,
  reference: ChannelLabel,
  inForce: SettingsInForce,
): ReadonlyMap<ChannelLabel, ChannelInForce> {
  const labels = layout.channels.map(({ label }) => label);
  const delays = processorDelays(labels, reference, inForce.distanceMetres);
  const hasSubs = layout.channels.some(({ kind }) => kind === 'sub');
  return new Map(
    layout.channels.map((channel) => {
      const delay = delays.get(channel.label) ?? null;
      const filter = filterInForce(channel, hasSubs, inForce);
      const notes = [
        ...(delay ? [] : [unknownDelay(channel.label, reference, inForce)]),
        ...(filter && channel.kind === 'sub' ? [lowPassNote(filter)] : []),
      ];
      const trimDb = inForce.trimDb[channel.label] ?? 0;
      return [channel.label, { delay, trimDb, filter, notes }];
    }),
  );
}

function filterInForce(
  { group, kind }: Channel,
  hasSubs: boolean,
  { crossoverHz, filters }: SettingsInForce,
): FilterInForce | null {
  const hz = crossoverHz[group] ?? null;
  if (hz === null) return null;
  const lowPass = filterOf(filters.subLowPass, 'low-pass', hz);
  if (kind === 'sub') return { spec: lowPass, bassOnSubs: null };
  const spec = filterOf(filters.highPass, 'high-pass', hz);
  return { spec, bassOnSubs: hasSubs ? lowPass : null };
}

function unknownDelay(
  label: ChannelLabel,
  reference: ChannelLabel,
  { distanceMetres }: DeclaredSettings,
): string {
  const bare = distanceMetres[label] === undefined ? label : reference;
  return msg(
    str`No distance: the processor has distances in force, but the one of ${bare} is not declared, so the delay between ${label} and ${reference} is not known. Type what it has for ${bare}, the factory's value too.`,
  );
}

function lowPassNote({ spec }: FilterInForce): string {
  const ms = 1000 * lowPassDelaySeconds(spec);
  return msg(
    str`The low-pass in force (${withUnit(trimmedText(spec.cutoffHz, 1), 'Hz')}) is divided out of the level and the response; its delay of about ${withUnit(numberText(ms, 1), 'ms')} stays in the arrival.`,
  );
}

/**
 * What a whole take has to say of the settings it was played with, as sentences; `subsAssumed` when
 * something else is said of the subs.
 */
export function takeOutNotes(
  layout: Layout,
  inForce: DeclaredSettings | null,
  subsAssumed = false,
): string[] {
  if (inForce === null) return [];
  if (isNothingInForce(inForce)) return [assumedNote()];
  return [
    ...takenOutNote(layout, inForce),
    ...unknownNote(layout, inForce, subsAssumed),
    ...equaliserNote(inForce),
  ];
}

const assumedNote = () =>
  msg(
    'Nothing was declared to be in force in the processor: read as if all its distances were alike, its trims 0 dB, its crossovers full range and its equaliser off.',
  );

function takenOutNote(layout: Layout, inForce: DeclaredSettings): string[] {
  const labels = layout.channels.map(({ label }) => label);
  const distances = labels.filter((label) => inForce.distanceMetres[label] !== undefined);
  const trims = labels.filter((label) => (inForce.trimDb[label] ?? 0) !== 0);
  const crossovers = groupsOf(layout).flatMap((group) => {
    const hz = inForce.crossoverHz[group];
    return typeof hz === 'number'
      ? [`${groupWord(group)} ${withUnit(trimmedText(hz, 1), 'Hz')}`]
      : [];
  });
  const parts = [
    ...(distances.length > 0 ? [msg(str`the distances of ${allOr(distances, labels)}`)] : []),
    ...(trims.length > 0 ? [msg(str`the trims of ${allOr(trims, labels)}`)] : []),
    ...(crossovers.length > 0
      ? [msg(str`the crossovers in force (${listInWords(crossovers)})`)]
      : []),
  ];
  return parts.length === 0
    ? []
    : [msg(str`Taken out of the readings, as declared: ${listInWords(parts)}.`)];
}

function allOr(some: readonly string[], all: readonly string[]): string {
  return some.length === all.length && all.length > 3 ? msg('all channels') : listInWords(some);
}

function unknownNote(
  layout: Layout,
  { crossoverHz }: DeclaredSettings,
  subsAssumed: boolean,
): string[] {
  const open = groupsOf(layout).filter(
    (group) => crossoverHz[group] === undefined && !(subsAssumed && group === 'subs'),
  );
  if (open.length === 0) return [];
  return [msg(str`Not declared, so read as full range: ${listInWords(open)}.`)];
}

function equaliserNote({ equaliser }: DeclaredSettings): string[] {
  switch (equaliser) {
    case 'off':
      return [];
    case 'on':
      return [
        msg(
          'The equaliser was on: levels, responses and roll-offs hold it, arrivals and polarities hardly. Switch it off and repeat the take before a crossover is taken from it.',
        ),
      ];
    case 'not known':
      return [msg('Whether the equaliser was on is not declared: read as if it was off.')];
  }
}

function groupsOf({ channels }: Layout): GroupId[] {
  return [...new Set(channels.map(({ group }) => group))];
}
