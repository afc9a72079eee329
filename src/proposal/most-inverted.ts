import type { ChannelReading } from '../reading/reading';
import type { ChannelLabel } from '../system/channel';
import type { ChannelMeasurement } from './channel-measurement';

/**
 * Speakers whose two wires are to be swapped: those that read inverted while most do not.
 */
export function wiredInverted(members: readonly ChannelMeasurement[]): ChannelLabel[] {
  const mains = members.filter(({ channel }) => channel.kind !== 'sub');
  if (mostInverted(mains.flatMap(({ reading }) => reading ?? []))) return [];
  return mains.flatMap(({ channel, reading }) =>
    reading?.polarity === 'inverted' ? [channel.label] : [],
  );
}

/**
 * Whether more speakers read inverted than normal, and at least two: then the microphone or its
 * input may be what turns the polarity over, not the wires. Common practice, no source.
 */
export function mostInverted(readings: readonly Pick<ChannelReading, 'polarity'>[]): boolean {
  const count = (wanted: ChannelReading['polarity']): number =>
    readings.filter(({ polarity }) => polarity === wanted).length;
  return count('inverted') > Math.max(1, count('normal'));
}
