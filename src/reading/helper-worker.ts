import { msg, str } from '@lit/localize';
import '../locale/hear-locale';
import type { ChannelLabel } from '../system/channel';
import { readOne, type CapturePiece, type FramedTake } from './read-one';
import type { ChannelReading } from './reading';

/** What a reading sends its helper: a take, then channels of it one by one. */
export type HelperOrder =
  | { readonly kind: 'take'; readonly take: FramedTake }
  | { readonly kind: 'channel'; readonly label: ChannelLabel; readonly piece: CapturePiece };

/** One answer a channel, in their order; a sentence where it could not be read. */
export type HelperAnswer = { readonly reading: ChannelReading } | { readonly failed: string };

let take: FramedTake | null = null;

function read(label: ChannelLabel, piece: CapturePiece): HelperAnswer {
  const channel = take?.channels.find((one) => one.label === label);
  if (!take || !channel) return { failed: msg(str`channel ${label} belongs to no take`) };
  try {
    return { reading: readOne(take, channel, piece) };
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}

self.onmessage = ({ data }: MessageEvent<HelperOrder>): void => {
  if (data.kind === 'take') take = data.take;
  else self.postMessage(read(data.label, data.piece));
};
