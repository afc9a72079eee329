import { hzText } from '../../locale/number-text';
import { msg, str } from '@lit/localize';
import { AudioContext } from 'standardized-audio-context';
import { trouble, type Trouble } from '../../trouble';
import { lowestRateHz } from './microphone-settings';
import { nativeAbilities, type NativeAbilities } from './native-context';

/** A running audio context on one output device, with all the device's channels open. */
export interface Output {
  readonly context: AudioContext;
  readonly native: NativeAbilities;
  readonly channels: number;
  /** Silence now, whatever state anything is in. */
  close(): void;
}

/** Mergers take this many inputs in every browser. */
const mostChannels = 32;

/**
 * Opens the output with this id (null: the system's default) at its own rate. For a take, call it
 * after the microphone is open: a system that moves both to another rate has done so then.
 */
export async function openOutput(outputId: string | null): Promise<Output | Trouble> {
  const context = new AudioContext({ latencyHint: 'playback' });
  const native = nativeAbilities(context);
  const close = (): void => {
    if (context.state !== 'closed') void context.close();
  };
  const refused = (await chooseOutput(native, outputId)) ?? judgeRate(context.sampleRate);
  if (refused) {
    close();
    return refused;
  }
  // The library puts a gain before the destination, which takes its channels from here.
  const { destination } = context;
  destination.channelCount = destination.maxChannelCount;
  destination.channelCountMode = 'explicit';
  destination.channelInterpretation = 'discrete';
  return { context, native, channels: Math.min(destination.maxChannelCount, mostChannels), close };
}

async function chooseOutput(native: NativeAbilities, id: string | null): Promise<Trouble | null> {
  if (id === null) return null;
  try {
    if (await native.setOutput(id)) return null;
  } catch {
    return trouble(
      'no-output',
      msg(
        'The chosen audio output is not there any more. Switch it on or choose another, then start again.',
      ),
    );
  }
  return trouble(
    'no-output',
    msg(
      'This browser cannot choose an audio output. Make the one you want the system’s default and choose the system’s output here.',
    ),
  );
}

function judgeRate(rate: number): Trouble | null {
  if (rate >= lowestRateHz) return null;
  return trouble(
    'wrong-rate',
    msg(
      str`The audio output runs at ${hzText(rate)} and needs at least ${hzText(44100)}. Wireless headsets do this: choose another output, or set its rate in the system's sound settings.`,
    ),
  );
}
