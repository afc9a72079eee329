/** Response of a microphone as its calibration file gives it; frequencies rise. */
export interface MicrophoneCalibration {
  /** Name of the file it came from. */
  readonly name: string;
  readonly hz: readonly number[];
  /** Microphone's response re its own at 1 kHz or as the file has it, dB; taken out of readings. */
  readonly db: readonly number[];
  /** Null when the file gives none; the phase is then the minimum phase of the magnitude. */
  readonly phaseDegrees: readonly number[] | null;
}

/** What turns dB re full scale into dB sound pressure level (re 20 µPa). */
export interface SoundLevelCalibration {
  /** Level in dB SPL that reads 0 dB re full scale (rms of a full-scale square is 0 dB). */
  readonly offsetDb: number;
  readonly how: 'calibrator' | 'sound level meter';
  /** ISO 8601. */
  readonly at: string;
  /** Microphone it was made with. */
  readonly microphone: string;
}

export interface MicrophoneSetup {
  readonly calibration: MicrophoneCalibration | null;
  readonly orientation: 'up' | 'at the speakers' | 'not noted';
  readonly soundLevel: SoundLevelCalibration | null;
}
