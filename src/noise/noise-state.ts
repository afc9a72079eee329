import type { RolloffReading } from '../reading/reading';
import type { RigKind } from '../rig/port';
import type { ChannelLabel } from '../system/channel';
import type { SoundLevel } from '../soundlevel/sound-level';

/** Live pink noise on one speaker, or listening to noise the processor plays. */
export interface NoiseRequest {
  readonly kind: 'noise' | 'listening';
  /** The speaker that sounds (with 'listening': the one the processor plays). */
  readonly channel: ChannelLabel;
  /** Band limits of the noise, Hz. */
  readonly lowHz: number;
  readonly highHz: number;
  /** At most 0; of no meaning when listening. */
  readonly gainDb: number;
  /** Bands an octave of the spectrum shown: 1, 3, 6, 12 or 24. */
  readonly bandsPerOctave: number;
  /** How long is averaged, 3 to 120 s. */
  readonly averagingSeconds: number;
}

/** Spectrum in fractional-octave bands; arrays of one length. dB re full scale or, when the
 * microphone is calibrated, sound pressure level; see `unit`. */
export interface NoiseSpectrum {
  readonly hz: readonly number[];
  readonly db: readonly number[];
  /** Noise floor under it, from the spread between periods or, listening, from the silence before. */
  readonly noiseDb: readonly (number | null)[];
  /** 0 … 1; null when listening. */
  readonly coherence: readonly (number | null)[];
  readonly unit: 'dBFS' | 'dB SPL';
}

/** What a finished noise or listening run is worth keeping. */
export interface NoiseReading {
  readonly id: string;
  readonly positionId: string;
  readonly kind: 'noise' | 'listening';
  readonly channel: ChannelLabel;
  /** ISO 8601. */
  readonly startedAt: string;
  readonly rig: RigKind;
  readonly simulated: boolean;
  readonly lowHz: number;
  readonly highHz: number;
  readonly seconds: number;
  /** In-room level as a sweep gives it (500 to 2000 Hz, subs 30 to 80 Hz), dB re full scale of the
   * stimulus; listening: band level at the microphone, dB re full scale. Null when it cannot be told. */
  readonly levelDb: number | null;
  /** Response re 500 to 2000 Hz (mains) or 40 to 80 Hz (subs), 1/24 octave, and the noise under it. */
  readonly response: {
    readonly hz: readonly number[];
    readonly db: readonly number[];
    readonly noiseDb: readonly number[];
  } | null;
  readonly rolloff: RolloffReading | null;
  readonly notes: readonly string[];
}

/** What the screen shows while noise plays or the tool listens. */
export interface NoiseState {
  readonly request: NoiseRequest;
  /** Seconds averaged so far, at most request.averagingSeconds. */
  readonly seconds: number;
  readonly secondsLeft: number;
  /** Whether the average is complete; the sound goes on until stopped. */
  readonly complete: boolean;
  readonly spectrum: NoiseSpectrum | null;
  /** Level of the noise's own band at the microphone, dB re full scale. */
  readonly bandLevelDb: number | null;
  readonly soundLevel: SoundLevel | null;
  /** Null until two whole periods were heard. */
  readonly reading: NoiseReading | null;
  /** Sentences: lost audio, clipping, noise that came in between. */
  readonly warnings: readonly string[];
}
