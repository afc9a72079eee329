import { msg, str } from '@lit/localize';
import {
  addAudioWorkletModule,
  AudioWorkletNode,
  MediaStreamAudioSourceNode,
} from 'standardized-audio-context';
import { trouble, type Trouble } from '../../trouble';
import { captureProcessor, type CaptureMessage } from './capture-message';
import captureUrl from './capture.worklet.ts?worker&url';
import type { Microphone } from './open-microphone';
import type { Output } from './open-output';

/** A microphone that is being captured. */
export interface CaptureLine {
  close(): void;
}

/** Joins the microphone with the context's clock; everything it hears comes as messages. */
export async function connectCapture(
  { context }: Output,
  microphone: Microphone,
  onMessage: (message: CaptureMessage) => void,
): Promise<CaptureLine | Trouble> {
  if (!addAudioWorkletModule || !AudioWorkletNode) {
    const sentence = msg('This browser cannot run audio worklets. Use a newer browser.');
    return trouble('failed', sentence);
  }
  await addAudioWorkletModule(context, new URL(captureUrl, document.baseURI).href);
  const capture = new AudioWorkletNode(context, captureProcessor, {
    numberOfOutputs: 0,
    channelCount: 2,
    channelCountMode: 'explicit',
    channelInterpretation: 'discrete',
  });
  const { port } = capture;
  port.onmessage = ({ data }: MessageEvent<CaptureMessage>) => onMessage(data);
  try {
    const source = new MediaStreamAudioSourceNode(context, { mediaStream: microphone.stream });
    source.connect(capture);
    return {
      close() {
        source.disconnect();
        port.onmessage = null;
      },
    };
  } catch (error) {
    // Firefox refuses a microphone whose rate is not the context's.
    const why = error instanceof Error ? error.message : String(error);
    return trouble(
      'wrong-rate',
      msg(
        str`The microphone “${microphone.label}” cannot be joined with the output, most likely because their rates differ (${why}). Set both to one rate in the system's sound settings.`,
      ),
    );
  }
}
