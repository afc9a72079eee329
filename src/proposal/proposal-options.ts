import type { Readings, RolloffReading } from '../reading/reading';
import type { ChannelLabel, Layout } from '../system/channel';
import type { ProcessorSheet } from '../system/sheet/processor-sheet';
import type { SeatReadings } from './bass-field';
import { pairReadings, type ChannelMeasurement } from './channel-measurement';
import type { ProposalChoices } from './choices';

/** What a proposal rests on beside one position's readings; all may be left out. */
export interface ProposalOptions {
  /** The processor's sheet, whose steps come in place of the plain ones. */
  readonly sheet?: ProcessorSheet | null;
  /** Name of the seat the readings are of; default "Seat 1". */
  readonly seat?: string;
  /** Other seats, in any order. */
  readonly otherSeats?: readonly SeatReadings[];
  /** Default: the tuner keeps to everything. */
  readonly choices?: ProposalChoices;
  /** The roll-off of a speaker; default that of its own reading. */
  readonly rolloffOf?: (channel: ChannelLabel) => RolloffReading | null;
  /** 'later' leaves sums and alignment aside, which takes most of the time; default 'now'. */
  readonly sums?: 'now' | 'later';
}

/** The layout's channels with their readings, roll-offs from elsewhere where that is asked for. */
export function measuredMembers(
  readings: Readings,
  layout: Layout,
  rolloffOf: ProposalOptions['rolloffOf'],
): readonly ChannelMeasurement[] {
  const members = pairReadings(readings, layout);
  if (!rolloffOf) return members;
  return members.map(({ channel, reading }) => ({
    channel,
    reading: reading && { ...reading, rolloff: rolloffOf(channel.label) },
  }));
}
