import '../locale/hear-locale';
import { msg, str } from '@lit/localize';
import { markBand, type MarkBand } from '../../dsp/timing/mark-band';
import type { ChannelLabel } from '../system/channel';
import type { GatheredSweeps } from './gather-sweeps';
import { gatherChannel, readOne, type CapturePiece, type UnframedTake } from './read-one';
import type { BandOrder } from './read-together';
import type { ChannelReading } from './reading';
import type { ReadingFrame } from './reading-frame';

/** What a reading sends its helper: a take, then its frame and, one by one, channels of it. */
export type HelperOrder =
  | { readonly kind: 'band'; readonly piece: BandOrder }
  | { readonly kind: 'take'; readonly take: UnframedTake }
  | { readonly kind: 'frame'; readonly frame: ReadingFrame }
  | { readonly kind: 'channel'; readonly label: ChannelLabel; readonly piece: CapturePiece };

/** One answer a channel or band, in their order; a sentence where it could not be read. */
export type HelperAnswer =
  { readonly reading: ChannelReading } | { readonly band: MarkBand } | { readonly failed: string };

interface Gathered {
  readonly label: ChannelLabel;
  readonly piece: CapturePiece;
  readonly sweeps: GatheredSweeps;
}

let take: UnframedTake | null = null;
let frame: ReadingFrame | null = null;
/** Gathered before the frame was known, or why that failed. */
let waiting: (Gathered | HelperAnswer)[] = [];

function gather(label: ChannelLabel, piece: CapturePiece): Gathered | HelperAnswer {
  if (!take) return { failed: msg(str`channel ${label} belongs to no take`) };
  const ground = take;
  return attempt(() => ({ label, piece, sweeps: gatherChannel(ground, label, piece) }));
}

function read(gathered: Gathered | HelperAnswer, inFrame: ReadingFrame): HelperAnswer {
  if (!('sweeps' in gathered)) return gathered;
  const { label, piece, sweeps } = gathered;
  const channel = take?.channels.find((one) => one.label === label);
  if (!take || !channel) return { failed: msg(str`channel ${label} belongs to no take`) };
  const framed = { ...take, frame: inFrame };
  return attempt(() => ({ reading: readOne(framed, channel, piece, sweeps) }));
}

function attempt<T>(what: () => T): T | HelperAnswer {
  try {
    return what();
  } catch (error) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }
}

function makeBand({ samples, sampleRate, mark }: BandOrder): void {
  const answer = attempt(() => ({ band: markBand(samples, sampleRate, mark) }));
  const given = 'band' in answer ? [answer.band.base.samples, answer.band.bare] : [samples];
  self.postMessage(answer, { transfer: given.map(({ buffer }) => buffer) });
}

self.onmessage = ({ data }: MessageEvent<HelperOrder>): void => {
  if (data.kind === 'band') makeBand(data.piece);
  else if (data.kind === 'take') {
    take = data.take;
    frame = null;
    waiting = [];
  } else if (data.kind === 'frame') {
    frame = data.frame;
    for (const one of waiting.splice(0)) self.postMessage(read(one, frame));
  } else {
    const gathered = gather(data.label, data.piece);
    if (frame) self.postMessage(read(gathered, frame));
    else waiting.push(gathered);
  }
};
