import type { MarkSpec } from '../../dsp/signal/mark';
import type { MarkBand } from '../../dsp/timing/mark-band';
import { hearMessages } from '../hear-messages';
import type { Channel, ChannelLabel } from '../system/channel';
import { cutPiece } from './cut-piece';
import type { GatheredSweeps } from './gather-sweeps';
import { fillSharedSound } from './shared-sound';
import { gatherChannel, readOne, type CapturePiece, type UnframedTake } from './read-one';
import type { ChannelReading } from './reading';
import type { ReadingFrame } from './reading-frame';
import type { Samples } from '../../dsp/signal/samples';

/** A piece of a capture whose band is asked for; it is given away. */
export interface BandOrder {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly mark: MarkSpec;
}

/** Channels that a helper is asked for at once. */
const mostInHand = 3;

/** Someone who reads channels beside this thread, one at a time. */
export interface ReadingHelper {
  /** A piece of a capture in the band of its marks; rejects when it cannot. */
  band(piece: BandOrder): Promise<MarkBand>;
  /** The take that the channels to come belong to. */
  begin(take: UnframedTake): void;
  /** The take's frame: channels asked for before are gathered until it comes. */
  setFrame(frame: ReadingFrame): void;
  /** Reads a channel from its piece of the capture, which is given away; rejects when it cannot. */
  read(label: ChannelLabel, piece: CapturePiece): Promise<ChannelReading>;
}

export interface ReadTogetherOptions {
  readonly signal?: AbortSignal;
  readonly helpers?: readonly ReadingHelper[];
  readonly onChannel?: (reading: ChannelReading, progress: number) => void;
  /** What else this thread has to do, done while helpers read the last channels. */
  readonly besides?: () => void;
}

/** The reference speaker's sweeps, and the frame that they and the tape give. */
export interface Referred {
  readonly sweeps: GatheredSweeps;
  readonly frame: ReadingFrame;
  readonly notes: readonly string[];
}

export interface ReadTogether {
  readonly channels: readonly ChannelReading[];
  readonly referred: Omit<Referred, 'sweeps'>;
}

/** The sweeps in a list, to be given away with the reading of their channel: no later one holds them. */
function apart({ sweeps, ...referred }: Referred) {
  return { gathered: [sweeps], referred };
}

/**
 * Reads all channels of a take, here and by the helpers, each taking the next one that is left;
 * in the order of the schedule. Helpers gather while `refer` gathers the reference speaker's sweeps
 * and finds the frame here. What a helper fails at is read here. Null when it was stopped.
 */
export async function readTogether(
  unframed: UnframedTake,
  samples: Samples,
  refer: () => Referred,
  { signal, helpers = [], onChannel, besides }: ReadTogetherOptions,
): Promise<ReadTogether | null> {
  const { schedule, clock } = unframed;
  const channels = [...new Set(schedule.segments.map(({ channel }) => channel))].flatMap(
    (label) => unframed.channels.find((one) => one.label === label) ?? [],
  );
  const left = channels.filter(({ label }) => label !== schedule.reference);
  const own = channels.filter(({ label }) => label === schedule.reference);
  const readings = new Map<ChannelLabel, ChannelReading>();
  const keep = (reading: ChannelReading): void => {
    readings.set(reading.channel, reading);
    onChannel?.(reading, readings.size / channels.length);
  };
  const inHand = new Map<ReadingHelper, number>();
  const readThere = async (helper: ReadingHelper): Promise<void> => {
    for (;;) {
      const already = inHand.get(helper) ?? 0;
      // None waits behind others for a helper that someone else could read.
      if (left.length <= already * helpers.length) return;
      const channel = signal?.aborted ? undefined : left.shift();
      if (!channel) return;
      inHand.set(helper, already + 1);
      try {
        keep(await helper.read(channel.label, cutPiece(samples, clock, schedule, channel.label)));
      } catch {
        left.push(channel);
        return;
      } finally {
        inHand.set(helper, (inHand.get(helper) ?? 1) - 1);
      }
    }
  };
  if (helpers.length > 0) {
    const shared = fillSharedSound(samples, unframed);
    for (const helper of helpers) helper.begin({ ...unframed, shared });
  }
  // Several at a time, so that a helper never waits for this thread to come round: it only gathers the
  // first ones until it has the frame.
  const there = Array.from({ length: mostInHand }, () => helpers.map(readThere)).flat();
  const { gathered, referred } = apart(refer());
  const { frame } = referred;
  for (const helper of helpers) helper.setFrame(frame);
  const take = { ...unframed, frame };
  // Ends with each channel, so that nothing of one is held while the next is read.
  const readOneHere = async (channel: Channel, sweeps?: GatheredSweeps): Promise<void> => {
    const piece = { samples, start: 0 };
    const found = sweeps ?? gatherChannel(take, channel.label, piece);
    await hearMessages();
    keep(readOne(take, channel, piece, found));
  };
  const readHere = async (): Promise<void> => {
    for (;;) {
      // So that a stop is heard, and helpers get what comes next.
      await hearMessages();
      const mine = own.shift();
      const channel = mine ?? left.shift();
      if (!channel || signal?.aborted) return;
      await readOneHere(channel, mine && gathered.pop());
    }
  };
  await readHere();
  besides?.();
  await Promise.all(there);
  // What a helper gave back after this thread had found nothing left.
  await readHere();
  if (signal?.aborted) return null;
  return { channels: channels.flatMap(({ label }) => readings.get(label) ?? []), referred };
}
