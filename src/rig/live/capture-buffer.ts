import type { CaptureMessage } from './capture-message';

/** Frames of a chunk at most. */
export const chunkFrames = 4096;
const channels = 2;
const levelsPerSecond = 20;

/** Gathers render quanta into messages. */
export interface CaptureBuffer {
  /** Takes one quantum (a browser reuses its arrays) whose first frame is `frame`. */
  push(input: readonly Float32Array[], frame: number): void;
}

/**
 * Copies quanta into chunks, each without a gap inside, and measures levels 20 times a second.
 * For the audio thread: allocates once a chunk, hands its arrays over to `send`, never waits.
 * An input without channels is silence.
 */
export function createCaptureBuffer(
  sampleRate: number,
  send: (message: CaptureMessage, transfer: ArrayBuffer[]) => void,
): CaptureBuffer {
  let chunk = newChunk();
  let filled = 0;
  let chunkFrame = 0;
  let expectedFrame = -1;
  let peak = 0;
  let levelFrames = 0;
  const squares = new Float64Array(channels);

  const sendChunk = (): void => {
    if (filled === 0) return;
    const sent = filled === chunkFrames ? chunk : chunk.map((samples) => samples.slice(0, filled));
    const buffers = sent.map((samples) => samples.buffer);
    send({ kind: 'chunk', frame: chunkFrame, channels: sent }, buffers);
    chunk = newChunk();
    filled = 0;
  };
  const measure = (samples: Float32Array, index: number): void => {
    let sum = 0;
    for (const value of samples) {
      sum += value * value;
      if (Math.abs(value) > peak) peak = Math.abs(value);
    }
    squares[index] = (squares[index] ?? 0) + sum;
  };
  const sendLevel = (frame: number): void => {
    const rms = Math.sqrt(Math.max(...squares) / levelFrames);
    send({ kind: 'level', frame, rms, peak }, []);
    squares.fill(0);
    peak = 0;
    levelFrames = 0;
  };

  return {
    push(input, frame) {
      const frames = input[0]?.length ?? 128;
      if (frame !== expectedFrame || filled + frames > chunkFrames) {
        sendChunk();
        chunkFrame = frame;
      }
      expectedFrame = frame + frames;
      for (const [index, into] of chunk.entries()) {
        const samples = input[index];
        if (!samples) continue;
        into.set(samples, filled);
        measure(samples, index);
      }
      filled += frames;
      levelFrames += frames;
      if (levelFrames >= sampleRate / levelsPerSecond) sendLevel(expectedFrame);
    },
  };
}

function newChunk(): Float32Array<ArrayBuffer>[] {
  return Array.from({ length: channels }, () => new Float32Array(chunkFrames));
}
