/** One microphone or output. Names are empty until the microphone was allowed once. */
export interface AudioDevice {
  readonly id: string;
  readonly name: string;
}

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
      .map(({ deviceId, label }) => ({ id: deviceId, name: label }));
  return { microphones: ofKind('audioinput'), outputs: ofKind('audiooutput') };
}

/** Absent on pages that came neither over https nor from this machine. */
export function mediaDevices(): MediaDevices | null {
  return 'mediaDevices' in navigator ? navigator.mediaDevices : null;
}
