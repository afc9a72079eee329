import type { Readings, RolloffReading } from '../reading/reading';
import { contradictSheet, contradictTogether } from '../reading/contradict-together';
import type { RolloffTogether } from '../reading/rolloff-together';
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
  /** Roll-offs read together from several seats and speakers; they go before a speaker's own. */
  readonly together?: readonly RolloffTogether[];
  /** The roll-off of a speaker; default that read together, else that of its own reading. */
  readonly rolloffOf?: (channel: ChannelLabel) => RolloffReading | null;
  /** 'later' leaves sums and alignment aside, which takes most of the time; default 'now'. */
  readonly sums?: 'now' | 'later';
}

/**
 * The layout's channels with their readings, their roll-offs read together where they were, or from
 * elsewhere where that is asked for.
 */
export function measuredMembers(
  readings: Readings,
  layout: Layout,
  { rolloffOf, together = [] }: Pick<ProposalOptions, 'rolloffOf' | 'together'>,
): readonly ChannelMeasurement[] {
  return pairReadings(readings, layout, together).map((member) => {
    const { channel, reading, together: found } = member;
    if (!reading) return member;
    const joint = found?.finding.rolloff;
    const said = found ? [contradictSheet(found), contradictTogether(reading, found)] : [];
    const contradicted = said.filter((one) => one !== null);
    const rolloff = rolloffOf ? rolloffOf(channel.label) : (joint ?? reading.rolloff);
    return { ...member, contradicted, reading: { ...reading, rolloff } };
  });
}
