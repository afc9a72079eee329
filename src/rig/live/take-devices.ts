/** A device as it was chosen: its id, and its name to find it again by when ids rotate. */
export interface NamedDevice {
  readonly id: string;
  readonly name: string;
}

/** Which devices the live rig uses; null follows the system. */
export interface TakeDevices {
  readonly microphone: NamedDevice | null;
  readonly output: NamedDevice | null;
  /** Input the microphone sits on; null: found from the sound. */
  readonly microphoneInput: 0 | 1 | null;
  /** Whether the other input hears the reference speaker's output through a cable. */
  readonly loopback: boolean;
}
