import type { Box } from './box';
import type { ConeDistortion } from './cone-distortion';
import type { Directivity } from './directivity';
import type { Point } from './point';

/** A bump of the passband: second-order peak of gainDb at hz. */
export interface Bump {
  readonly hz: number;
  readonly gainDb: number;
  readonly q: number;
}

/** A loudspeaker without its place. Level is re 1 at 1 m on axis in the passband. */
export interface SpeakerModel {
  readonly box: Box;
  /** Butterworth high-pass that guards the cone, second order; null for none. */
  readonly protectionHz: number | null;
  /** Butterworth low-pass at the upper end: a tweeter's roll-off or a sub's filter. */
  readonly upper: { readonly hz: number; readonly order: 2 | 4 };
  readonly bumps: readonly Bump[];
  /** Slope of the passband about 1 kHz, dB per octave. */
  readonly tiltDbPerOctave: number;
  /** Linkwitz-Riley-4 crossover inside the speaker (its all-pass phase); null for none. */
  readonly crossoverHz: number | null;
  readonly directivity: Directivity;
  readonly gainDb: number;
  readonly inverted: boolean;
  /** Delay inside the speaker, seconds. */
  readonly delaySeconds: number;
  /** Left out: its cone does not distort. */
  readonly cone?: ConeDistortion;
}

/** A speaker in its place; `aim` is the unit vector of its axis. */
export interface Speaker extends SpeakerModel {
  readonly position: Point;
  readonly aim: Point;
}
