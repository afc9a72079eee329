/** Sound read from a WAV file. Samples lie within −1 … 1 unless a float file goes beyond. */
export interface WavFile {
  readonly sampleRate: number;
  readonly coding: 'integer' | 'float';
  /** Bits that each sample claims to use, as the file says. */
  readonly bits: number;
  /** Speaker positions of WAVE_FORMAT_EXTENSIBLE; null in a plain file. */
  readonly channelMask: number | null;
  /** Samples per channel. */
  readonly frames: number;
  readonly channels: readonly Float32Array[];
}

/** How a WAV to be written codes its samples: bits of an integer, or 32-bit float. */
export type WavDepth = 16 | 24 | 32 | 'float';

/** A WAV to be written. */
export interface WavSpec {
  readonly channelCount: number;
  /** Samples per channel. */
  readonly frames: number;
  readonly sampleRate: number;
  readonly depth: WavDepth;
  /** Speaker position bits in the order of the channels; 0 leaves them open. */
  readonly channelMask: number;
}

/** Bytes of one sample at a depth. */
export function bytesPerSample(depth: WavDepth): number {
  return depth === 'float' ? 4 : depth / 8;
}
