import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { MicLevel, Rig, RigAbilities } from '../port';
import { listDevices, mediaDevices } from './list-devices';
import { canChooseOutput } from './native-context';
import { openOutput } from './open-output';
import { playTake, type TakeDevices } from './play-take';

/** Devices and wiring of the live rig; whatever is left out follows the system. */
export type LiveRigOptions = Partial<TakeDevices>;

/**
 * This computer's outputs and a microphone through the browser. One audio context and one stream
 * for each take, opened for it and closed with it. Call `play` from inside a click.
 */
export function liveRig(options: LiveRigOptions = {}): Rig {
  const devices: TakeDevices = {
    microphoneId: null,
    outputId: null,
    outputs: {},
    microphoneChannel: null,
    ...options,
  };
  const listeners = new Set<(level: MicLevel) => void>();
  return {
    kind: 'live',
    simulated: false,
    describe: () => describeDevices(devices),
    play: (schedule, playOptions) =>
      playTake(schedule, devices, playOptions, (level) => {
        for (const listener of listeners) listener(level);
      }),
    monitor(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

async function describeDevices(devices: TakeDevices): Promise<RigAbilities | Trouble> {
  if (!mediaDevices()) {
    return trouble(
      'no-permission',
      'This page may not use a microphone because it did not come over https or from this machine. Open it by its https address or from localhost.',
    );
  }
  const { microphones, outputs } = await listDevices();
  if (microphones.length === 0) {
    return trouble('no-microphone', 'No microphone was found. Plug one in, then try again.');
  }
  if (outputs.length === 0 && canChooseOutput()) {
    return trouble(
      'no-output',
      'No audio output was found. Connect or switch on one, then try again.',
    );
  }
  const output = await openOutput(devices.outputId);
  if (isTrouble(output)) return output;
  const { channels, context } = output;
  output.close();
  return {
    kind: 'live',
    name: outputs.find(({ id }) => id === devices.outputId)?.name ?? 'system output',
    simulated: false,
    outputs: channels,
    inputs: 2,
    sampleRate: context.sampleRate,
    unknown: ['order of the output channels', 'latency'],
  };
}
