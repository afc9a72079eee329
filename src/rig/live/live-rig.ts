import { msg } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { MicLevel, Rig, RigAbilities } from '../port';
import { findAgain, listDevices, mediaDevices, plainName } from './list-devices';
import { canChooseOutput } from './native-context';
import { openOutput } from './open-output';
import { openLine } from './open-line';
import { platformUnknowns } from './platform-unknowns';
import { playTake } from './play-take';
import type { TakeDevices } from './take-devices';

/** Devices of the live rig; whatever is left out follows the system. */
export type LiveRigOptions = Partial<TakeDevices>;

/**
 * This computer's outputs and a microphone through the browser. One audio context and one stream
 * for each take, opened for it and closed with it. Call `play` from inside a click.
 */
export function liveRig(options: LiveRigOptions = {}): Rig {
  const devices: TakeDevices = {
    microphone: null,
    output: null,
    microphoneInput: null,
    loopback: false,
    ...options,
  };
  const listeners = new Set<(level: MicLevel) => void>();
  const tell = (level: MicLevel): void => {
    for (const listener of listeners) listener(level);
  };
  return {
    kind: 'live',
    simulated: false,
    describe: () => describeDevices(devices),
    play: (schedule, playOptions) => playTake(schedule, devices, playOptions, tell),
    open: (lineOptions) => openLine(devices, lineOptions, tell),
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
      msg(
        'This page may not use a microphone because it did not come over https or from this machine. Open it by its https address or from localhost.',
      ),
    );
  }
  const { microphones, outputs } = await listDevices();
  if (microphones.length === 0) {
    return trouble(
      'no-microphone',
      msg(
        'No microphone was found. Plug one in or, if one is plugged in, close and reopen the browser, then try again.',
      ),
    );
  }
  if (outputs.length === 0 && canChooseOutput()) {
    return trouble(
      'no-output',
      msg('No audio output was found. Connect or switch on one, then try again.'),
    );
  }
  const chosen = devices.output && findAgain(devices.output, outputs);
  const output = await openOutput(chosen?.id ?? devices.output?.id ?? null);
  if (isTrouble(output)) return output;
  const { channels, context } = output;
  output.close();
  return {
    kind: 'live',
    name: plainName(chosen?.name ?? devices.output?.name ?? '') || msg('system output'),
    simulated: false,
    outputs: channels,
    inputs: 2,
    sampleRate: context.sampleRate,
    unknown: [msg('order of the output channels'), 'latency', ...platformUnknowns()],
  };
}
