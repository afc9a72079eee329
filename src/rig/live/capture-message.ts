/** Name under which the capture processor registers. */
export const captureProcessor = 'leadline-capture';

/** A stretch of microphone audio without a gap inside; `frame` is the context's frame count. */
export interface CaptureChunk {
  readonly kind: 'chunk';
  readonly frame: number;
  /** One array a channel, all of one length. */
  readonly channels: readonly Float32Array[];
}

/** Level of the microphone since the last such message; the louder of its channels. */
export interface CaptureLevel {
  readonly kind: 'level';
  readonly frame: number;
  readonly rms: number;
  readonly peak: number;
}

export type CaptureMessage = CaptureChunk | CaptureLevel;
