import type { NamedDevice } from './take-devices';

/** One microphone or output. Names are empty until the microphone was allowed once. */
export type AudioDevice = NamedDevice;

export interface AudioDevices {
  readonly microphones: readonly AudioDevice[];
  /** Empty in browsers that do not tell. */
  readonly outputs: readonly AudioDevice[];
}

/** Ids that follow the system's choice instead of naming a device. */
const aliases = new Set(['default', 'communications']);

/** The microphones and outputs this browser tells of, without asking for anything. */
export async function listDevices(): Promise<AudioDevices> {
  const media = mediaDevices();
  if (!media) return { microphones: [], outputs: [] };
  const devices = await media.enumerateDevices();
  const ofKind = (kind: MediaDeviceKind): AudioDevice[] =>
    devices
      .filter((device) => device.kind === kind && !aliases.has(device.deviceId))
      .map(({ deviceId, label }) => ({ id: deviceId, name: plainName(label) }));
  return { microphones: ofKind('audioinput'), outputs: ofKind('audiooutput') };
}

/** Absent on pages that came neither over https nor from this machine. */
export function mediaDevices(): MediaDevices | null {
  return 'mediaDevices' in navigator ? navigator.mediaDevices : null;
}

/** Longest name shown; systems let a name be anything. */
const longestName = 60;

/** A device's name on one line, without control or direction marks, not too long. */
export function plainName(label: string): string {
  const plain = label
    .replace(/[\p{C}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const letters = [...plain];
  return letters.length <= longestName ? plain : `${letters.slice(0, longestName - 1).join('')}…`;
}

/** The device that was chosen: by its id, else the only one of its name; null when it is not there. */
export function findAgain(
  chosen: NamedDevice,
  devices: readonly AudioDevice[],
): AudioDevice | null {
  const same = devices.find(({ id }) => id === chosen.id);
  if (same) return same;
  const named = devices.filter(({ name }) => name !== '' && name === chosen.name);
  return named.length === 1 ? (named[0] ?? null) : null;
}

/** Chromium on Linux tells that a device came or went only when it is asked for the list. */
const lookSeconds = 2;

/** Calls back when devices may have come or gone; returns the way to stop watching. */
export function watchDeviceList(onChange: () => void): () => void {
  const media = mediaDevices();
  if (!media) return () => undefined;
  media.addEventListener('devicechange', onChange);
  const looking = setInterval(() => {
    if (document.visibilityState === 'visible') onChange();
  }, lookSeconds * 1000);
  return () => {
    media.removeEventListener('devicechange', onChange);
    clearInterval(looking);
  };
}
