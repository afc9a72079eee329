import type { Weighting } from '../../dsp/level/weighting';

/** What a sound level meter shows. */
export interface SoundLevel {
  readonly weighting: Weighting;
  readonly time: 'fast' | 'slow';
  /** dB SPL when calibrated, else dB re full scale. */
  readonly db: number;
  readonly calibrated: boolean;
}

/** Sound the person in the room has taken today, against NIOSH 98-126 (85 dB(A), 8 h, 3 dB). */
export interface Exposure {
  /** Share of the daily dose, 0 up; null while the microphone is not calibrated. */
  readonly dose: number | null;
  /** Equivalent A-weighted level over `seconds`, dB SPL; null while not calibrated. */
  readonly equivalentDb: number | null;
  readonly seconds: number;
}

/** What the climb to a test level is to reach. */
export interface ClimbRequest {
  /** Noise margin wanted in the deciding band, dB; default 25. */
  readonly marginDb: number;
  /** Sound level wanted at the microphone, dB SPL with C weighting; null when not calibrated. */
  readonly targetDb: number | null;
  /** Never above this gain, dB, at most 0. */
  readonly capDb: number;
}

/** Why a climb ended. */
export type ClimbEnd = 'margin' | 'target' | 'cap' | 'clipping' | 'too loud' | 'unheard';

/** What the screen shows while the level climbs, and its result. */
export interface ClimbState {
  readonly gainDb: number;
  readonly marginDb: number | null;
  readonly soundLevel: SoundLevel | null;
  /** 0 … 1. */
  readonly progress: number;
  readonly secondsLeft: number;
}

export interface ClimbResult {
  readonly end: ClimbEnd;
  /** Gain to use for takes. */
  readonly gainDb: number;
  readonly marginDb: number | null;
  /** Which of the two was met, or why it stopped, in a sentence. */
  readonly sentence: string;
  /** Two levels 6 dB apart must differ by 6 ± 0.3 dB; null when there was too little margin to tell. */
  readonly linearity: { readonly stepDb: number; readonly passes: boolean } | null;
}
