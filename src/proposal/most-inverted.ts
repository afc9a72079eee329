import type { ChannelReading } from '../reading/reading';

/**
 * Whether more speakers read inverted than normal, and at least two: then the microphone or its
 * input may be what turns the polarity over, not the wires. Common practice, no source.
 */
export function mostInverted(readings: readonly Pick<ChannelReading, 'polarity'>[]): boolean {
  const count = (wanted: ChannelReading['polarity']): number =>
    readings.filter(({ polarity }) => polarity === wanted).length;
  return count('inverted') > Math.max(1, count('normal'));
}
