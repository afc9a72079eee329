import { median } from '../../dsp/signal/median';
import type { ChannelLabel } from '../system/channel';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { sayDb, sayNumber, startSentence } from './phrases';
import type { ProcessorSteps } from './proposal';
import { isWithin, quantise } from './quantise';

export interface LevelProposal {
  readonly levelTrimDb: number | null;
  readonly levelReason: string;
  readonly warnings: readonly string[];
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
 * against the mains'), in the processor's steps. The reference keeps 0 dB unless a trim would leave
 * the range; then all move together.
 */
export function levelProposer(
  members: readonly ChannelMeasurement[],
  reference: ChannelLabel,
  processor: ProcessorSteps,
): (member: ChannelMeasurement) => LevelProposal {
  const target = findTarget(members, reference, processor);
  return (member) => proposeLevel(member, target, reference, processor);
}

function proposeLevel(
  member: ChannelMeasurement,
  target: Target | null,
  reference: ChannelLabel,
  processor: ProcessorSteps,
): LevelProposal {
  const level = member.reading?.levelDb ?? null;
  if (level === null || !target) {
    return { levelTrimDb: null, levelReason: sayMissing(member, 'level'), warnings: [] };
  }
  const { levelStepDb: step, levelRangeDb: range } = processor;
  const wanted = target.levelDb - level;
  const trim = quantise(wanted, step, range);
  const short = isWithin(wanted, range) ? 0 : wanted - trim;
  const off = Math.abs(trim - wanted);
  return {
    levelTrimDb: trim,
    levelReason: [
      sayLevel(member, level, target, reference),
      ...(target.shiftDb === 0
        ? []
        : [
            `All trims are moved by ${sayDb(target.shiftDb)} together to fit the processor's range.`,
          ]),
      short === 0
        ? `Rounding to ${sayNumber(step, 1)} dB leaves ${sayNumber(off, 1)} dB.`
        : `The processor's range ends ${sayNumber(off, 1)} dB short.`,
    ].join(' '),
    warnings: short === 0 ? [] : [sayShort(member, short)],
  };
}

function sayLevel(
  { channel }: ChannelMeasurement,
  level: number,
  target: Target,
  reference: ChannelLabel,
): string {
  if (channel.label === reference) {
    return startSentence(`${channel.name} is what the others are set against.`);
  }
  const difference = level - (target.levelDb - target.shiftDb);
  const amount = sayNumber(Math.abs(difference), 1);
  const word = difference < 0 ? 'quieter' : 'louder';
  const compared =
    amount === '0.0' ? 'as loud in the room as' : `${amount} dB ${word} in the room than`;
  const other = target.against ?? 'the middle of the mains';
  const band = channel.kind === 'sub' ? ' (30 to 80 Hz)' : '';
  return startSentence(`${channel.name}${band} is ${compared} ${other} (500 to 2000 Hz).`);
}

function sayShort({ channel }: ChannelMeasurement, short: number): string {
  const amount = `${sayNumber(Math.abs(short), 1)} dB`;
  const turn = short < 0 ? 'down' : 'up';
  return channel.kind === 'sub'
    ? `Turn the sub's own level ${turn} by at least ${amount} and measure again.`
    : `${startSentence(channel.name)} stays ${amount} too ${short < 0 ? 'loud' : 'quiet'}: look for a gain or pad at its amplifier.`;
}

/** The common level: the reference's, or the mains' median, moved so that every trim fits. */
function findTarget(
  members: readonly ChannelMeasurement[],
  reference: ChannelLabel,
  processor: ProcessorSteps,
): Target | null {
  const levels = members.flatMap(({ channel, reading }) =>
    typeof reading?.levelDb === 'number' ? [{ channel, db: reading.levelDb }] : [],
  );
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
