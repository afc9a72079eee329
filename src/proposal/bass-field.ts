import { bassGrid, type SeatTransfers, type Transfer } from '../../dsp/bass/transfer';
import { heardBass } from '../reading/heard-bass';
import type { Readings } from '../reading/reading';
import type { ChannelLabel } from '../system/channel';
import { isSub } from '../system/channel-names';

/** The readings of one seat; those of the current position stand first. */
export interface SeatReadings {
  readonly name: string;
  readonly readings: Readings;
}

/** The captured bass of all channels at the seats where all subs were captured. */
export interface BassField {
  readonly hz: Float64Array;
  /** Names of the seats in use. */
  readonly seats: readonly string[];
  /** Subs with bass at all of them, in order. */
  readonly subs: readonly { readonly channel: ChannelLabel; readonly seats: SeatTransfers }[];
  /** Mains with bass at all of them. */
  readonly mains: ReadonlyMap<ChannelLabel, SeatTransfers>;
  /** Signal over noise from 40 to 80 Hz of the subs at the noisiest seat, dB; null where not known. */
  readonly marginDb: number | null;
}

/** Below this the phase of a speaker is not known to half a radian, dB. */
const leastMarginDb = 10;

/**
 * The bass of all channels; null where no sub was captured. A main that was not captured at all of
 * the seats, or lies under the noise at one, is left out.
 */
export function bassField(
  labels: readonly ChannelLabel[],
  seats: readonly SeatReadings[],
): BassField | null {
  const hz = bassGrid();
  const [here] = seats;
  if (!here) return null;
  const subs = labels.filter((label) => isSub(label) && transferIn(here.readings, label));
  if (subs.length === 0) return null;
  const used = seats.filter(({ readings }) => subs.every((label) => transferIn(readings, label)));
  const atSeats = (label: ChannelLabel): SeatTransfers =>
    used.flatMap(({ readings }) => transferIn(readings, label) ?? []);
  const mains = labels.flatMap((label): [ChannelLabel, SeatTransfers][] => {
    if (isSub(label)) return [];
    const margin = worstMargin(used, [label]);
    const transfers = atSeats(label);
    const clear = margin === null || margin >= leastMarginDb;
    return transfers.length === used.length && clear ? [[label, transfers]] : [];
  });
  return {
    hz,
    seats: used.map(({ name }) => name),
    subs: subs.map((channel) => ({ channel, seats: atSeats(channel) })),
    mains: new Map(mains),
    marginDb: worstMargin(used, subs),
  };
}

function transferIn({ channels }: Readings, label: ChannelLabel): Transfer | null {
  return heardBass(channels.find(({ channel }) => channel === label));
}

function worstMargin(
  seats: readonly SeatReadings[],
  labels: readonly ChannelLabel[],
): number | null {
  const margins = seats.flatMap(({ readings }) =>
    readings.channels.flatMap(({ channel, bassMarginDb }) =>
      labels.includes(channel) && bassMarginDb !== null ? [bassMarginDb] : [],
    ),
  );
  return margins.length === 0 ? null : Math.min(...margins);
}
