import type { MicrophoneCalibration } from '../microphone/calibration';
import type { SettingsInForce } from '../system/declared-settings';
import type { Schedule } from '../take/schedule';

/** The sound of one take and what it is read with; plain data, so that it travels to a worker. */
export interface TakeSound {
  readonly takeId: string;
  readonly schedule: Schedule;
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly loopback: Float32Array | null;
  readonly calibration: MicrophoneCalibration | null;
  readonly inForce: SettingsInForce | null;
}
