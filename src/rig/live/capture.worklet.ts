import { createCaptureBuffer } from './capture-buffer';
import { captureProcessor } from './capture-message';

/* What the standard gives an audio worklet's global scope and the DOM library does not declare. */
declare const currentFrame: number;
declare const sampleRate: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Sends all that the microphone gives, with its frame count, to the page. */
class Capture extends AudioWorkletProcessor {
  private readonly buffer = createCaptureBuffer(sampleRate, (message, transfer) => {
    this.port.postMessage(message, transfer);
  });

  process(inputs: Float32Array[][]): boolean {
    this.buffer.push(inputs[0] ?? [], currentFrame);
    return true;
  }
}

registerProcessor(captureProcessor, Capture);
