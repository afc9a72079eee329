import { msg, str } from '@lit/localize';
import type { ChannelReading, Readings } from '../reading/reading';
import { togetherOf, type RolloffTogether } from '../reading/rolloff-together';
import type { Channel, Layout } from '../system/channel';
import { layoutOrder } from '../system/layout';

/** A declared channel with what was read of it; null when the take holds nothing of it. */
export interface ChannelMeasurement {
  readonly channel: Channel;
  readonly reading: ChannelReading | null;
  /** The roll-off of its model, from all seats; null when none was read together. */
  readonly together: RolloffTogether | null;
  /** What it contradicts: the speaker's own reading, its sheet. */
  readonly contradicted?: readonly string[];
}

export type MissingNumber = 'roll-off' | 'arrival' | 'level';

/** The layout's channels in the fixed order of channels, each with its reading. */
export function pairReadings(
  readings: Readings,
  layout: Layout,
  together: readonly RolloffTogether[] = [],
): readonly ChannelMeasurement[] {
  const byLabel = new Map(readings.channels.map((reading) => [reading.channel, reading]));
  return layoutOrder
    .flatMap((label) => layout.channels.filter((channel) => channel.label === label))
    .map((channel) => ({
      channel,
      reading: byLabel.get(channel.label) ?? null,
      together: togetherOf(together, channel.label),
    }));
}

/** Why a number is missing: the segment's faults, and the reading's notes about that number. */
export function sayMissing(measurement: ChannelMeasurement, what: MissingNumber): string {
  const { channel, reading } = measurement;
  if (!reading) return msg(str`The take holds nothing of ${channel.name}, so there is no ${what}.`);
  const about = reading.notes.filter((note) => note.toLowerCase().includes(what));
  const notes = about.length > 0 ? about : reading.notes;
  const faults = reading.faults.map((fault) => fault.sentence);
  return [msg(str`No ${what} could be read for ${channel.name}.`), ...faults, ...notes].join(' ');
}
