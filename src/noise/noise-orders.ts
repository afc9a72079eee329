import type { MicrophoneCalibration, SoundLevelCalibration } from '../microphone/calibration';
import type { SoundLevel } from '../soundlevel/sound-level';
import type { NoiseReading, NoiseRequest, NoiseSpectrum } from './noise-state';

/** What stays the same while a line is open. */
export interface NoiseSetting {
  readonly sampleRate: number;
  readonly isSub: boolean;
  readonly calibration: MicrophoneCalibration | null;
  readonly soundLevel: SoundLevelCalibration | null;
}

/** What the page asks of the analysis. `run` numbers the averages, so that late news is told apart. */
export type NoiseOrder =
  | { readonly kind: 'open'; readonly setting: NoiseSetting }
  | {
      readonly kind: 'render';
      readonly lowHz: number;
      readonly highHz: number;
      readonly run: number;
    }
  | { readonly kind: 'begin'; readonly request: NoiseRequest; readonly run: number }
  | { readonly kind: 'gain'; readonly gainDb: number }
  | { readonly kind: 'show'; readonly request: NoiseRequest }
  | { readonly kind: 'block'; readonly samples: Float32Array }
  | { readonly kind: 'gap'; readonly frames: number };

/** The numbers of a reading; who, where and when are the page's. */
export type ReadNumbers = Pick<
  NoiseReading,
  'seconds' | 'levelDb' | 'response' | 'rolloff' | 'notes'
>;

/** What is known of the running average. */
export interface NoiseNews {
  readonly seconds: number;
  readonly secondsLeft: number;
  readonly complete: boolean;
  readonly spectrum: NoiseSpectrum | null;
  readonly bandLevelDb: number | null;
  readonly numbers: ReadNumbers | null;
  readonly warnings: readonly string[];
}

export type NoiseAnswer =
  | { readonly kind: 'period'; readonly period: Float32Array; readonly run: number }
  | {
      readonly kind: 'news';
      readonly run: number;
      readonly news: NoiseNews;
      readonly soundLevel: SoundLevel | null;
      /** Mean A-weighted level since the last news, dB re full scale, and how long that was. */
      readonly aWeightedDb: number;
      readonly heardSeconds: number;
    }
  | { readonly kind: 'failed'; readonly why: string };
