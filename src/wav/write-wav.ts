import { encodeChannel } from './encode-frames';
import { bytesPerSample, type WavDepth, type WavSpec } from './wav-file';
import { wavHeader } from './wav-header';

/** Fills `into` with the samples of a channel from frame `start` on. */
export type FrameSource = (channel: number, start: number, into: Float32Array) => void;

const blockFrames = 16384;

/**
 * A WAV piece by piece, so that a long take of many channels is never whole in memory: the header,
 * then blocks of frames, then the padding byte where one is due. `dither` as in encodeChannel.
 * Throws RangeError for a spec that no WAV can hold and for a sample that is not finite.
 */
export function* wavPieces(
  spec: WavSpec,
  source: FrameSource,
  dither?: () => number,
): Generator<Uint8Array<ArrayBuffer>> {
  yield wavHeader(spec);
  const { channelCount, frames, depth } = spec;
  const frameBytes = channelCount * bytesPerSample(depth);
  for (let start = 0; start < frames; start += blockFrames) {
    const samples = new Float32Array(Math.min(blockFrames, frames - start));
    const piece = new Uint8Array(samples.length * frameBytes);
    const view = new DataView(piece.buffer);
    for (let channel = 0; channel < channelCount; channel++) {
      source(channel, start, samples.fill(0));
      encodeChannel(samples, view, channel, channelCount, depth, dither);
    }
    yield piece;
  }
  if ((frames * frameBytes) % 2 === 1) yield new Uint8Array(1);
}

/**
 * A whole WAV in memory from channels of one length. Throws RangeError when lengths differ, and as
 * wavPieces does.
 */
export function writeWav(sound: {
  readonly channels: readonly Float32Array[];
  readonly sampleRate: number;
  readonly depth: WavDepth;
  readonly channelMask: number;
}): Uint8Array<ArrayBuffer> {
  const { channels, ...rest } = sound;
  const frames = channels[0]?.length ?? 0;
  const odd = channels.findIndex((samples) => samples.length !== frames);
  if (odd >= 0) {
    throw new RangeError(
      `channel ${odd} must have ${frames} samples, got ${channels[odd]?.length}`,
    );
  }
  const spec = { ...rest, channelCount: channels.length, frames };
  const source: FrameSource = (channel, start, into) => {
    const samples = channels[channel]?.subarray(start, start + into.length);
    if (samples) into.set(samples);
  };
  return joinPieces([...wavPieces(spec, source)]);
}

/** One array of many, in order. */
export function joinPieces(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    joined.set(piece, at);
    at += piece.length;
  }
  return joined;
}
