import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import type { ChannelLabel } from '../system/channel';
import type { Abilities } from './abilities';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { sayDb, sayLossDb, sayNumber, startSentence } from './phrases';
import type { ChannelProposal } from './proposal';
import { isWithin, quantise } from './quantise';
import { groundsOf, sayReasons, type Reason } from './reason';
import { sayUnsureLevel } from './say-unsure-level';

export type LevelProposal = Pick<
  ChannelProposal,
  'level' | 'levelTrimDb' | 'levelReason' | 'levelReasons'
> & { readonly warnings: readonly string[] };

/** How the subs are levelled. */
export interface SubLevels {
  /** What the tuner wants beside level bass, dB. */
  readonly preferenceDb: number;
  /** Of each sub against the first where they were set against each other; 0 otherwise. */
  readonly gainDb: ReadonlyMap<ChannelLabel, number>;
  /** How much louder all are than the first alone; null where they were not captured. */
  readonly overFirstDb: number | null;
  /** The first of them. */
  readonly first: ChannelLabel | null;
}

export interface LevelCase {
  readonly members: readonly ChannelMeasurement[];
  readonly reference: ChannelLabel;
  readonly processor: Abilities;
  readonly subs: SubLevels;
}

interface Target {
  readonly levelDb: number;
  /** Name of the speaker the others are set against; null when it could not be read. */
  readonly against: string | null;
  /** How far all trims are moved from that speaker's 0 dB. */
  readonly shiftDb: number;
}

/**
 * Proposes the trim to type for a channel, dB: all in-room levels become one (subs: their own band
 * against the mains', several of them together, and the tuner's preference over it), in the
 * processor's steps. The reference keeps 0 dB unless a trim would leave the range; then all move
 * together.
 */
export function levelProposer(one: LevelCase): (member: ChannelMeasurement) => LevelProposal {
  const target = findTarget(one);
  return (member) => proposeLevel(member, target, one);
}

/** Trims as they are wished, before rounding and a common shift, dB. */
export function wishedTrims(one: LevelCase): ReadonlyMap<ChannelLabel, number> {
  const target = findTarget(one);
  if (!target) return new Map();
  return new Map(
    one.members.flatMap((member): [ChannelLabel, number][] => {
      const level = effectiveLevel(member, one);
      return level === null
        ? []
        : [[member.channel.label, target.levelDb - target.shiftDb - level]];
    }),
  );
}

/** The level whose undoing is the trim wished for: a sub's without its share and preference. */
function effectiveLevel(
  { channel, reading }: ChannelMeasurement,
  { members, subs }: LevelCase,
): number | null {
  if (channel.kind !== 'sub') return reading?.levelDb ?? null;
  const { preferenceDb, gainDb, overFirstDb, first } = subs;
  const own = gainDb.get(channel.label);
  if (overFirstDb === null || own === undefined) {
    return typeof reading?.levelDb === 'number' ? reading.levelDb - preferenceDb : null;
  }
  const firstDb = members.find((one) => one.channel.label === first)?.reading?.levelDb ?? null;
  return firstDb === null ? null : firstDb + overFirstDb - own - preferenceDb;
}

function proposeLevel(
  member: ChannelMeasurement,
  target: Target | null,
  one: LevelCase,
): LevelProposal {
  const level = effectiveLevel(member, one);
  if (level === null || !target) {
    const reason = { sentence: sayMissing(member, 'level'), grounds: [] };
    return {
      level: null,
      levelTrimDb: null,
      levelReason: reason.sentence,
      levelReasons: [reason],
      warnings: [],
    };
  }
  const { levelStepDb: step, levelRangeDb: range } = one.processor;
  const wanted = target.levelDb - level;
  const trim = quantise(wanted, step, range);
  const short = isWithin(wanted, range) ? 0 : wanted - trim;
  const off = Math.abs(trim - wanted);
  const reasons = [
    {
      sentence: sayLevel(member, level, target, one),
      grounds: groundsOf([member.channel.label], 'levelDb'),
    },
    ...sayUnsure(member, one),
    ...(member.channel.kind === 'sub' ? sayPreference(one.subs) : []),
    ...(target.shiftDb === 0
      ? []
      : [
          plain(
            msg(
              str`All trims are moved by ${sayDb(target.shiftDb)} together to fit the processor's range.`,
            ),
          ),
        ]),
    plain(
      short === 0
        ? msg(
            str`Rounding to ${withUnit(sayNumber(step, 1), 'dB')} leaves ${withUnit(sayNumber(off, 1), 'dB')}.`,
          )
        : msg(str`The processor's range ends ${withUnit(sayNumber(off, 1), 'dB')} short.`),
    ),
  ];
  return {
    level: { value: trim, unit: 'dB', step, costMs: 0, costDb: off },
    levelTrimDb: trim,
    levelReason: sayReasons(reasons),
    levelReasons: reasons,
    warnings: short === 0 ? [] : [sayShort(member, short)],
  };
}

function plain(sentence: string): Reason {
  return { sentence, grounds: [] };
}

function sayUnsure({ channel, reading }: ChannelMeasurement, one: LevelCase): Reason[] {
  const { members, reference, processor, subs } = one;
  if (channel.label === reference) return [];
  const readingOf = (label: ChannelLabel | null) =>
    members.find((member) => member.channel.label === label)?.reading ?? null;
  const isTogether = subs.overFirstDb !== null && subs.gainDb.has(channel.label);
  const heard = isTogether ? readingOf(subs.first) : reading;
  return sayUnsureLevel(heard, readingOf(reference), processor.levelStepDb);
}

function sayPreference({ preferenceDb }: SubLevels): Reason[] {
  if (preferenceDb === 0) return [];
  const way = preferenceDb > 0 ? msg('louder') : msg('quieter');
  return [plain(msg(str`You want the subs ${sayLossDb(preferenceDb)} ${way} than level.`))];
}

function sayLevel(
  { channel, reading }: ChannelMeasurement,
  level: number,
  target: Target,
  { reference, subs }: LevelCase,
): string {
  if (channel.label === reference) {
    return startSentence(msg(str`${channel.name} is what the others are set against.`));
  }
  const common = target.levelDb - target.shiftDb;
  const several = subs.gainDb.size > 1 && subs.gainDb.has(channel.label);
  const other = target.against ?? msg('the middle of the mains');
  const isSub = channel.kind === 'sub';
  const own = subs.gainDb.get(channel.label) ?? 0;
  const together = level + own + subs.preferenceDb;
  const heard = isSub ? (several ? together : (reading?.levelDb ?? level)) : level;
  const band = isSub ? msg(' (30 to 80 Hz)') : '';
  const difference = heard - common;
  const amount = sayNumber(Math.abs(difference), 1);
  const word = difference < 0 ? msg('quieter') : msg('louder');
  const compared =
    Math.abs(difference) < 0.05
      ? msg('as loud in the room as')
      : msg(str`${withUnit(amount, 'dB')} ${word} in the room than`);
  if (several) {
    const beside =
      channel.label === subs.first
        ? ''
        : msg(
            str` For even bass from seat to seat ${channel.name} is set ${sayDb(own)} beside the first.`,
          );
    return msg(str`The subs together${band} are ${compared} ${other} (500 to 2000 Hz).${beside}`);
  }
  return startSentence(msg(str`${channel.name}${band} is ${compared} ${other} (500 to 2000 Hz).`));
}

function sayShort({ channel }: ChannelMeasurement, short: number): string {
  const amount = withUnit(sayNumber(Math.abs(short), 1), 'dB');
  const turn = short < 0 ? 'down' : 'up';
  return channel.kind === 'sub'
    ? msg(str`Turn the sub's own level ${turn} by at least ${amount} and measure again.`)
    : msg(
        str`${startSentence(channel.name)} stays ${amount} too ${short < 0 ? msg('loud') : msg('quiet')}: look for a gain or pad at its amplifier.`,
      );
}

/** The common level: the reference's, or the mains' median, moved so that every trim fits. */
function findTarget(one: LevelCase): Target | null {
  const { members, reference, processor } = one;
  const levels = members.flatMap((member) => {
    const db = effectiveLevel(member, one);
    return db === null ? [] : [{ channel: member.channel, db }];
  });
  const own = levels.find(({ channel }) => channel.label === reference);
  const mains = levels.filter(({ channel }) => channel.kind !== 'sub').map(({ db }) => db);
  const start = own?.db ?? (mains.length === 0 ? null : median(mains));
  if (start === null) return null;
  const { levelRangeDb, levelStepDb } = processor;
  const all = levels.map(({ db }) => db);
  const shiftDb =
    commonShift(start, all, levelRangeDb, levelStepDb) ??
    commonShift(start, mains, levelRangeDb, levelStepDb) ??
    0;
  return { levelDb: start + shiftDb, against: own?.channel.name ?? null, shiftDb };
}

/** Least shift in whole steps with low ≤ start + shift − level ≤ high for all; null when none is. */
function commonShift(
  start: number,
  levels: readonly number[],
  [low, high]: readonly [number, number],
  step: number,
): number | null {
  const least = Math.ceil((low + Math.max(...levels) - start) / step - 1e-9) * step;
  const most = Math.floor((high + Math.min(...levels) - start) / step + 1e-9) * step;
  return least > most ? null : Math.min(Math.max(0, least), most) + 0;
}
