import { msg, str } from '@lit/localize';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { joinPieces, writeWav } from '../wav/write-wav';
import { fileName, type FileFacts } from './file-name';

/** A file of bytes. */
export interface BinaryFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

const cueBytes = 36;

/**
 * An impulse response as a mono WAV of 32-bit floats, unscaled, at its own rate in whole hertz: what
 * rounding takes from a clock that runs off moves the end of a response by 16 µs at most. Zero delay
 * is told twice: by the sample in the file's name, counted from 0, and by a cue point on it. Throws
 * RangeError for a response that is empty, not finite, or has its zero delay outside. Source: RIFF
 * WAVE, Multimedia Programming Interface 1.0 (1991), cue chunk, from memory.
 */
export function responseToWav(ir: ImpulseResponse, facts: FileFacts): BinaryFile {
  const { samples, sampleRate, zeroIndex } = ir;
  if (!Number.isInteger(zeroIndex) || zeroIndex < 0 || zeroIndex >= samples.length) {
    throw new RangeError(`zeroIndex must be a sample of the response, got ${zeroIndex}`);
  }
  const wav = writeWav({
    channels: [Float32Array.from(samples)],
    sampleRate: Math.round(sampleRate),
    depth: 'float',
    channelMask: 0,
  });
  const bytes = joinPieces([wav, cueChunk(zeroIndex)]);
  new DataView(bytes.buffer).setUint32(4, bytes.length - 8, true);
  const what = msg(str`impulse response zero delay at sample ${zeroIndex}`);
  return { name: fileName(facts, what, 'wav'), bytes };
}

/** One cue point on a sample. */
function cueChunk(sample: number): Uint8Array {
  const bytes = new Uint8Array(cueBytes);
  const view = new DataView(bytes.buffer);
  const put = (at: number, text: string): void => {
    for (let n = 0; n < 4; n++) view.setUint8(at + n, text.charCodeAt(n));
  };
  put(0, 'cue ');
  view.setUint32(4, cueBytes - 8, true);
  // One point; its number, its place in the order of play, and where it stands in the data chunk.
  view.setUint32(8, 1, true);
  view.setUint32(12, 1, true);
  view.setUint32(16, sample, true);
  put(20, 'data');
  view.setUint32(32, sample, true);
  return bytes;
}
