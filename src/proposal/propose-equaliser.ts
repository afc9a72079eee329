import { msg, str } from '@lit/localize';
import type { BassCase } from './bass-case';
import type { BassSettings } from './bass-settings';
import type { ChannelMeasurement } from './channel-measurement';
import type { ChannelEqualiser, EqualiserAdvice } from './equaliser';
import { afterBands, deviationOf, equaliseSeats, seatLevels } from './equalise-seats';
import { sayHz, sayLossDb } from './phrases';
import { groundsOf, type Reason } from './reason';

/** In rooms of a home the modes stand apart up to about here, Hz (common practice, no source). */
const upToHz = 200;
const lowestHz = 20;
/** A band narrower than this, as a ratio, is not worth equalising. */
const narrowest = 1.5;

/** Sections for every channel whose bass was captured; null while the equaliser is off. */
export function proposeEqualiser(
  { bass, members }: BassCase,
  { crossoverHz, subLowPassHz }: BassSettings,
  count: number,
): EqualiserAdvice | null {
  if (!(count > 0) || !bass) return null;
  const { hz, mains, subs } = bass.field;
  const highest = Math.max(0, ...Object.values(crossoverHz).map((one) => one ?? 0));
  const channels = members.flatMap((member): ChannelEqualiser[] => {
    const { label, group, kind } = member.channel;
    const seats = mains.get(label) ?? subs.find(({ channel }) => channel === label)?.seats;
    const isSub = kind === 'sub';
    const low = Math.max(lowestHz, reachOf(member), isSub ? 0 : (crossoverHz[group] ?? 0));
    const high = isSub ? Math.min(upToHz, subLowPassHz ?? Math.max(highest, 120)) : upToHz;
    if (!seats || high / low < narrowest) return [];
    const before = seatLevels(hz, seats, low, high);
    const bands = equaliseSeats(before, count);
    const after = afterBands(before, bands);
    const beforeDb = before.seats.map(deviationOf);
    const afterDb = after.seats.map(deviationOf);
    return [
      {
        channel: label,
        bands,
        beforeDb,
        afterDb,
        reasons: sayBands(member, beforeDb, afterDb, low, high, bands.length),
      },
    ];
  });
  return { upToHz, channels };
}

function reachOf({ reading }: ChannelMeasurement): number {
  return reading?.rolloff?.f3Hz.median ?? lowestHz;
}

function sayBands(
  { channel }: ChannelMeasurement,
  before: readonly number[],
  after: readonly number[],
  low: number,
  high: number,
  count: number,
): Reason[] {
  const grounds = groundsOf([channel.label], 'bass');
  const range = msg(str`from ${sayHz(low)} to ${sayHz(high)}`);
  if (count === 0) {
    const sentence = msg(
      str`${channel.label}: no section would make it more even ${range} at all seats.`,
    );
    return [{ sentence, grounds }];
  }
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  return [
    {
      sentence: msg(
        str`${channel.label} deviates ${range} by ${sayLossDb(mean(before))} as it is and by ${sayLossDb(mean(after))} with ${count === 1 ? msg('one section') : msg(str`${count} sections`)}, mean over ${before.length === 1 ? msg('one seat') : msg(str`${before.length} seats`)}.`,
      ),
      grounds,
    },
  ];
}
