import { findAgain } from '../../rig/live/list-devices';
import { isTrouble } from '../../trouble';
import type { Devices } from '../bench';
import type { Desk } from '../desk';
import { tellChange } from './tell-change';
import type { ChosenDevice, SessionDocument } from '../document';

/** Keeps the list of devices, and the ids of those chosen, as they are now. */
export interface DeviceWatch {
  /** Looks now and whenever something comes or goes from now on. */
  look(ask: boolean): Promise<void>;
}

export function createDeviceWatch(desk: Desk): DeviceWatch {
  const { devices } = desk.parts;
  let watching = false;

  async function refresh(): Promise<void> {
    const { microphones, outputs } = await devices.list();
    const before = desk.state.devices;
    const found = { microphones, outputs };
    if (before && sameDevices(before, found)) return;
    const change = before && tellChange(before, found, desk.state.document.live);
    desk.set({ devices: { ...found, change } });
    const document = withDevicesFound(desk.state.document, found);
    if (document !== desk.state.document && desk.state.saved !== 'elsewhere') {
      desk.change((now) => withDevicesFound(now, found), null);
    }
  }

  return {
    async look(ask) {
      const refused = ask ? await devices.ask() : null;
      if (isTrouble(refused)) desk.raise(refused);
      await refresh();
      if (watching) return;
      watching = true;
      devices.watch(() => void refresh());
    },
  };
}

type Found = Pick<Devices, 'microphones' | 'outputs'>;

/** A chosen device that came back under another id, or whose name was not known, is taken as found. */
function withDevicesFound(document: SessionDocument, found: Found): SessionDocument {
  const { live } = document;
  const output = asFound(live.output, found.outputs);
  const microphone = asFound(live.microphone, found.microphones);
  if (output === live.output && microphone === live.microphone) return document;
  return { ...document, live: { ...live, output, microphone } };
}

function asFound(
  chosen: ChosenDevice | null,
  devices: readonly ChosenDevice[],
): ChosenDevice | null {
  const found = chosen && findAgain(chosen, devices);
  if (!found || (found.id === chosen.id && (found.name === chosen.name || !found.name))) {
    return chosen;
  }
  return { id: found.id, name: found.name || chosen.name };
}

function sameDevices(before: Found, now: Found): boolean {
  const text = ({ microphones, outputs }: Found): string => JSON.stringify([microphones, outputs]);
  return text(before) === text(now);
}
