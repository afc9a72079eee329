import { captureProcessor, type CaptureMessage } from './capture-message';

/* What the standard gives an audio worklet's global scope and the DOM library does not declare. */
declare const currentFrame: number;
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

const chunkFrames = 4096;
const channels = 2;
const levelsPerSecond = 20;

/**
 * Copies what the microphone gives into chunks and sends them with their frame count. Runs on the
 * audio thread: allocates once a chunk, transfers it, never waits.
 */
class Capture extends AudioWorkletProcessor {
  private chunk = newChunk();
  private filled = 0;
  private chunkFrame = 0;
  private expectedFrame = -1;
  private squares = new Float64Array(channels);
  private peak = 0;
  private levelFrames = 0;

  process(inputs: Float32Array[][]): boolean {
    const input = inputs[0] ?? [];
    const frames = input[0]?.length ?? 128;
    if (currentFrame !== this.expectedFrame || this.filled + frames > chunkFrames) {
      this.sendChunk();
      this.chunkFrame = currentFrame;
    }
    this.expectedFrame = currentFrame + frames;
    for (const [index, into] of this.chunk.entries()) {
      const samples = input[index];
      if (samples) into.set(samples, this.filled);
      if (samples) this.measure(samples, index);
    }
    this.filled += frames;
    this.levelFrames += frames;
    if (this.levelFrames >= sampleRate / levelsPerSecond) this.sendLevel();
    return true;
  }

  private measure(samples: Float32Array, index: number): void {
    let squares = 0;
    for (const value of samples) {
      squares += value * value;
      if (Math.abs(value) > this.peak) this.peak = Math.abs(value);
    }
    this.squares[index] = (this.squares[index] ?? 0) + squares;
  }

  private sendLevel(): void {
    const rms = Math.sqrt(Math.max(...this.squares) / this.levelFrames);
    this.send({ kind: 'level', frame: currentFrame, rms, peak: this.peak }, []);
    this.squares.fill(0);
    this.peak = 0;
    this.levelFrames = 0;
  }

  private sendChunk(): void {
    if (this.filled === 0) return;
    const whole = this.filled === chunkFrames;
    const sent = whole ? this.chunk : this.chunk.map((samples) => samples.slice(0, this.filled));
    this.send(
      { kind: 'chunk', frame: this.chunkFrame, channels: sent },
      sent.map((samples) => samples.buffer),
    );
    this.chunk = newChunk();
    this.filled = 0;
  }

  private send(message: CaptureMessage, transfer: Transferable[]): void {
    this.port.postMessage(message, transfer);
  }
}

function newChunk(): Float32Array<ArrayBuffer>[] {
  return Array.from({ length: channels }, () => new Float32Array(chunkFrames));
}

registerProcessor(captureProcessor, Capture);
