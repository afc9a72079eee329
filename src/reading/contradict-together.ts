import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { ChannelReading, Estimate } from './reading';
import { heardInWords, type RolloffTogether } from './rolloff-together';

/** A sheet may be off by this factor before it is called wrong: two of its standard deviations. */
const sheetFactor = 1.3;

/**
 * That a speaker's own roll-off at this seat cannot be that of its model, because an interval of
 * one and of the other do not meet, as a sentence; null when they can be one, and where a fault spoils
 * the reading. Common practice.
 */
export function contradictTogether(
  { channel, rolloff, faults }: ChannelReading,
  { order, finding }: RolloffTogether,
): string | null {
  const joint = finding.rolloff;
  if (faults.length > 0 || !rolloff || !joint) return null;
  const apart = (['f6Hz', 'f3Hz', 'f10Hz'] as const).find(
    (which) => !meet(rolloff[which], joint[which]),
  );
  if (!apart) return null;
  const down = msg(str`${apart.slice(1, -2)} dB down`);
  return msg(
    str`${channel} alone is ${down} at ${sayEstimate(rolloff[apart])}, from ${heardInWords(order)} at ${sayEstimate(joint[apart])}: both cannot be. Repeat ${channel}, and if it stays so, say that it is another model.`,
  );
}

/** That a model's sheet and what was heard exclude one another, as a sentence; null when not. */
export function contradictSheet({ order, finding }: RolloffTogether): string | null {
  const { sheetF3Hz } = order;
  if (sheetF3Hz === null || !finding.rolloff) return null;
  const { f3Hz } = finding.rolloff;
  const [low, high] = f3Hz.interval;
  if (sheetF3Hz * sheetFactor >= low && sheetF3Hz / sheetFactor <= high) return null;
  return msg(
    str`By the sheet ${order.channels.join(', ')} would be 3 dB down at ${withUnit(numberText(sheetF3Hz, 0), 'Hz')}, by what is heard at ${sayEstimate(f3Hz)}. Check the sheet’s value.`,
  );
}

function meet(a: Estimate, b: Estimate): boolean {
  return a.interval[0] <= b.interval[1] && b.interval[0] <= a.interval[1];
}

function sayEstimate({ median, interval: [low, high] }: Estimate): string {
  return msg(
    str`${withUnit(numberText(median, 0), 'Hz')} (${numberText(low, 0)} to ${numberText(high, 0)})`,
  );
}
