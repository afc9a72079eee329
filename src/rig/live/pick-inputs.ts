import { msg, str } from '@lit/localize';
import { meanSquare } from '../../../dsp/level/mean-square';
import { chooseChannel } from './choose-channel';
import type { TakeDevices } from './take-devices';

/** Which input is the microphone, and which the loopback; null when there is none. */
export interface PickedInputs {
  readonly microphone: number;
  readonly loopback: number | null;
}

/** Steps of a 16-bit converter: what is quieter everywhere is no input at all. */
const nothingThere = 2 ** -16;

/**
 * Tells the inputs apart from what they heard. With a loopback, the wire is the one whose sound
 * stands higher over its own silence: a room has noise and reverberation. `silentFrames` at the
 * start are without the take's sound.
 */
export function pickInputs(
  channels: readonly Float32Array[],
  silentFrames: number,
  devices: Pick<TakeDevices, 'microphoneInput' | 'loopback'>,
): PickedInputs {
  const { microphoneInput, loopback } = devices;
  if (!loopback || channels.length < 2) {
    return { microphone: microphoneInput ?? chooseChannel(channels), loopback: null };
  }
  if (microphoneInput !== null) {
    return { microphone: microphoneInput, loopback: 1 - microphoneInput };
  }
  const margins = channels.map((samples) => {
    const quiet = rms(samples.subarray(0, silentFrames));
    return rms(samples.subarray(silentFrames)) / Math.max(quiet, nothingThere);
  });
  const wire = (margins[1] ?? 0) > (margins[0] ?? 0) ? 1 : 0;
  return { microphone: 1 - wire, loopback: wire };
}

/** Which input is which, for the record. */
export function inputNotes({ microphone, loopback }: PickedInputs): string[] {
  const notes = [msg(str`microphone on input ${microphone + 1}`)];
  if (loopback !== null) notes.push(msg(str`loopback on input ${loopback + 1}`));
  return notes;
}

function rms(samples: Float32Array): number {
  return Math.sqrt(meanSquare(samples));
}
