import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import type { PortSize } from './close-to';
import type { BassBands, BassReading } from './reading';
import type { RolloffFinding } from './rolloff-finding';

/** The bass of one speaker at one seat, as it lies in a session. */
export interface KeptAtSeat {
  readonly channel: ChannelLabel;
  /** Seats of one name are one place of the microphone. */
  readonly seat: string;
  readonly bass: BassBands;
}

/** The bass of one speaker with the microphone held to it, as it lies in a session. */
export interface KeptClose {
  readonly channel: ChannelLabel;
  readonly bass: BassBands;
  /** The cone of a box whose port is not heard in `bass`. */
  readonly coneOnly: boolean;
  /** The same box's port heard by itself, to be summed with its cone; null when it is not. */
  readonly port: KeptPort | null;
}

export interface KeptPort {
  readonly size: PortSize;
  readonly bass: BassBands;
  /** Cone and port, on bassGrid(). */
  readonly coneHeard: BassReading;
  readonly portHeard: BassReading;
  /** How much louder the test signal was at the cone, dB. */
  readonly coneLouderDb: number;
}

/** What one roll-off is read from: speakers of one model, as heard at the seats. */
export interface TogetherOrder {
  /** All speakers of the model, heard or not. */
  readonly channels: readonly ChannelLabel[];
  readonly isSub: boolean;
  /** By the model's sheet; null when it is not known. */
  readonly sheetF3Hz: number | null;
  readonly heard: readonly KeptAtSeat[];
  /** One of them heard close by, which tells more than all seats: `heard` is empty then. */
  readonly close?: KeptClose | undefined;
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
    isSameClose(a.close, b.close) &&
    a.channels.length === b.channels.length &&
    a.channels.every((label, index) => label === b.channels[index]) &&
    a.heard.length === b.heard.length &&
    a.heard.every(({ channel, seat, bass }, index) => {
      const other = b.heard[index];
      return channel === other?.channel && seat === other.seat && bass === other.bass;
    })
  );
}

function isSameClose(a: KeptClose | undefined, b: KeptClose | undefined): boolean {
  return (
    a?.channel === b?.channel &&
    a?.bass === b?.bass &&
    a?.coneOnly === b?.coneOnly &&
    a?.port?.bass === b?.port?.bass &&
    a?.port?.size.coneMetres === b?.port?.size.coneMetres &&
    a?.port?.size.portMetres === b?.port?.size.portMetres &&
    a?.port?.coneLouderDb === b?.port?.coneLouderDb
  );
}

/** A bass of an order by which its finding is remembered; undefined when it has none. */
export function firstBass({ heard, close }: TogetherOrder): BassBands | undefined {
  return heard[0]?.bass ?? close?.bass;
}

/** The roll-off that holds for a speaker; null when none was read together. */
export function togetherOf(
  together: readonly RolloffTogether[],
  label: ChannelLabel,
): RolloffTogether | null {
  return together.find(({ order }) => order.channels.includes(label)) ?? null;
}

/** "3 seats and 2 speakers", or what was heard close by. */
export function heardInWords({ heard, close }: TogetherOrder): string {
  if (close?.port) return msg(str`cone and port of ${close.channel}`);
  if (close)
    return close.coneOnly
      ? msg(str`the cone of ${close.channel}`)
      : msg(str`close to ${close.channel}`);
  const seats = new Set(heard.map(({ seat }) => seat)).size;
  const speakers = new Set(heard.map(({ channel }) => channel)).size;
  return msg(str`${counted(seats, msg('seat'))} and ${counted(speakers, msg('speaker'))}`);
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
