import { breathe } from '../breathe';
import type { ChannelLabel } from '../system/channel';
import { cutPiece } from './cut-piece';
import type { GatheredSweeps } from './gather-sweeps';
import { fillSharedSound } from './shared-sound';
import { readOne, type CapturePiece, type FramedTake } from './read-one';
import type { ChannelReading } from './reading';

/** Someone who reads channels beside this thread, one at a time. */
export interface ReadingHelper {
  /** The take that the channels to come belong to. */
  begin(take: FramedTake): void;
  /** Reads a channel from its piece of the capture, which is given away; rejects when it cannot. */
  read(label: ChannelLabel, piece: CapturePiece): Promise<ChannelReading>;
}

export interface ReadTogetherOptions {
  readonly signal?: AbortSignal;
  readonly helpers?: readonly ReadingHelper[];
  readonly onChannel?: (reading: ChannelReading, progress: number) => void;
}

/**
 * Reads all channels of a take, here and by the helpers, each taking the next one that is left;
 * in the order of the schedule. The reference speaker's sweeps are gathered already. What a helper
 * fails at is read here. Null when it was stopped.
 */
export async function readTogether(
  take: FramedTake,
  samples: Float64Array,
  reference: GatheredSweeps,
  { signal, helpers = [], onChannel }: ReadTogetherOptions,
): Promise<ChannelReading[] | null> {
  const { schedule, clock } = take;
  const channels = [...new Set(schedule.segments.map(({ channel }) => channel))].flatMap(
    (label) => take.channels.find((one) => one.label === label) ?? [],
  );
  const left = channels.filter(({ label }) => label !== schedule.reference);
  const own = channels.filter(({ label }) => label === schedule.reference);
  const readings = new Map<ChannelLabel, ChannelReading>();
  const keep = (reading: ChannelReading): void => {
    readings.set(reading.channel, reading);
    onChannel?.(reading, readings.size / channels.length);
  };
  const readHere = async (): Promise<void> => {
    for (;;) {
      // So that a stop is heard.
      await breathe();
      const mine = own.shift();
      const channel = mine ?? left.shift();
      if (!channel || signal?.aborted) return;
      keep(readOne(take, channel, { samples, start: 0 }, mine && reference));
    }
  };
  const readThere = async (helper: ReadingHelper): Promise<void> => {
    for (;;) {
      const channel = signal?.aborted ? undefined : left.shift();
      if (!channel) return;
      try {
        keep(await helper.read(channel.label, cutPiece(samples, clock, schedule, channel.label)));
      } catch {
        left.push(channel);
        return;
      }
    }
  };
  if (helpers.length > 0) {
    const shared = fillSharedSound(samples, take);
    for (const helper of helpers) helper.begin({ ...take, shared });
  }
  // Two at a time, so that a helper never waits for this thread to come round.
  const there = helpers.flatMap((helper) => [readThere(helper), readThere(helper)]);
  await readHere();
  await Promise.all(there);
  // What a helper gave back after this thread had found nothing left.
  await readHere();
  if (signal?.aborted) return null;
  return channels.flatMap(({ label }) => readings.get(label) ?? []);
}
