import type { CapturedBlock } from '../port';
import { chooseChannel } from './choose-channel';
import type { CaptureChunk } from './capture-message';
import type { PickedInputs } from './pick-inputs';
import type { TakeDevices } from './take-devices';

/** The microphone's side is told from so much of the quiet before a line opens, seconds. */
const listenSeconds = 1;

/** Turns chunks into blocks once the line is open; holds a second of them before. */
export interface LineBlocks {
  listen(chunk: CaptureChunk): void;
  /** Tells the sides apart, forgets what was heard, and counts frames from the next chunk. */
  open(): PickedInputs;
  close(): void;
}

/**
 * Blocks of the microphone and the loopback of a line. Where the microphone's side is not known it
 * is the louder one before anything plays: a room is never as quiet as a wire or an open input.
 */
export function createLineBlocks(
  sampleRate: number,
  devices: Pick<TakeDevices, 'microphoneInput' | 'loopback'>,
  onBlock: (block: CapturedBlock) => void,
): LineBlocks {
  let quiet: CaptureChunk[] = [];
  let picked: PickedInputs | null = null;
  let closed = false;
  let first: number | null = null;
  return {
    listen(chunk) {
      if (closed) return;
      if (!picked) {
        const since = chunk.frame - listenSeconds * sampleRate;
        quiet = [...quiet.filter(({ frame }) => frame >= since), chunk];
        return;
      }
      const { frame, channels } = chunk;
      const samples = channels[picked.microphone];
      if (!samples) return;
      first ??= frame;
      const loopback = picked.loopback === null ? null : (channels[picked.loopback] ?? null);
      onBlock({ frame: frame - first, samples, loopback });
    },
    open() {
      const microphone = devices.microphoneInput ?? louderSide(quiet);
      quiet = [];
      picked = { microphone, loopback: devices.loopback ? 1 - microphone : null };
      return picked;
    },
    close() {
      closed = true;
      quiet = [];
    },
  };
}

function louderSide(chunks: readonly CaptureChunk[]): number {
  return chooseChannel([0, 1].map((side) => joined(chunks, side)));
}

function joined(chunks: readonly CaptureChunk[], side: number): Float32Array {
  const pieces = chunks.flatMap(({ channels }) => channels[side] ?? []);
  const all = new Float32Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
