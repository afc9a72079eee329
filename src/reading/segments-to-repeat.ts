import type { ChannelLabel } from '../system/channel';
import type { ChannelReading, Readings } from './reading';

/** Speakers whose segments came out damaged and are worth repeating, in the order of the readings. */
export function segmentsToRepeat(readings: Readings): ChannelLabel[] {
  return readings.channels.filter(isDamaged).map(({ channel }) => channel);
}

/** Whether a reading has a fault that a repeated segment may not have. */
export function isDamaged({ faults }: ChannelReading): boolean {
  return faults.length > 0;
}
