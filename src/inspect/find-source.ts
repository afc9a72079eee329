import { isDamaged } from '../reading/segments-to-repeat';
import type { TakeRecord } from '../session/document';
import type { ChannelLabel } from '../system/channel';
import type { SoundSource } from './inspection';

/**
 * The take in which a speaker is best heard at a position: the newest in which it was read whole,
 * else the newest in which it was read at all; null when there is none.
 */
export function findSource(
  takes: readonly TakeRecord[],
  layout: string,
  positionId: string,
  channel: ChannelLabel,
): SoundSource | null {
  const read = takes.flatMap(({ id, position, schedule, readings }) => {
    const reading = readings?.channels.find((one) => one.channel === channel);
    const here = position.id === positionId && schedule.layout === layout;
    return here && reading?.curves ? [{ id, whole: !isDamaged(reading) }] : [];
  });
  const best = read.findLast(({ whole }) => whole) ?? read.at(-1);
  return best ? { takeId: best.id, channel } : null;
}
