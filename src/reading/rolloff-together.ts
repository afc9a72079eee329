import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import type { BassBands } from './reading';
import type { RolloffFinding } from './rolloff-finding';

/** The bass of one speaker at one seat, as it lies in a session. */
export interface KeptAtSeat {
  readonly channel: ChannelLabel;
  /** Seats of one name are one place of the microphone. */
  readonly seat: string;
  readonly bass: BassBands;
}

/** What one roll-off is read from: speakers of one model, as heard at the seats. */
export interface TogetherOrder {
  /** All speakers of the model, heard or not. */
  readonly channels: readonly ChannelLabel[];
  readonly isSub: boolean;
  /** By the model's sheet; null when it is not known. */
  readonly sheetF3Hz: number | null;
  readonly heard: readonly KeptAtSeat[];
}

/** A roll-off that holds for all speakers of its order, or why there is none. */
export interface RolloffTogether {
  readonly order: TogetherOrder;
  readonly finding: RolloffFinding;
}

/** Whether two orders give one finding: the same bass, not only an equal one. */
export function isSameOrder(a: TogetherOrder, b: TogetherOrder): boolean {
  return (
    a.isSub === b.isSub &&
    a.sheetF3Hz === b.sheetF3Hz &&
    a.channels.length === b.channels.length &&
    a.channels.every((label, index) => label === b.channels[index]) &&
    a.heard.length === b.heard.length &&
    a.heard.every(({ channel, seat, bass }, index) => {
      const other = b.heard[index];
      return channel === other?.channel && seat === other.seat && bass === other.bass;
    })
  );
}

/** The roll-off that holds for a speaker; null when none was read together. */
export function togetherOf(
  together: readonly RolloffTogether[],
  label: ChannelLabel,
): RolloffTogether | null {
  return together.find(({ order }) => order.channels.includes(label)) ?? null;
}

/** "3 seats and 2 speakers". */
export function heardInWords({ heard }: TogetherOrder): string {
  const seats = new Set(heard.map(({ seat }) => seat)).size;
  const speakers = new Set(heard.map(({ channel }) => channel)).size;
  return msg(str`${counted(seats, msg('seat'))} and ${counted(speakers, msg('speaker'))}`);
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
