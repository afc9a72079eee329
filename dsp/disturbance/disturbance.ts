import type { ImpulseResponse } from '../response/impulse-response';
import type { SweepSpec } from '../signal/sweep';

/** Sound in a sweep's segment that is neither the take's nor its steady noise. */
export interface Disturbance {
  /**
   * bang: short and wide. rumble: longer, below 100 Hz. hum: steady lines of the mains. voice:
   * syllables. noisy: anything else.
   */
  readonly kind: 'bang' | 'rumble' | 'hum' | 'voice' | 'noisy';
  /** Seconds after the sweep's start; may be negative. */
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly lowHz: number;
  readonly highHz: number;
  /** Over the take's own noise, in that band and while it lasts. */
  readonly excessDb: number;
  /** How far it may move the response in the third-octave it hits most (about one case in twenty is worse). */
  readonly errorDb: number;
  readonly errorHz: number;
}

export interface DisturbanceInput {
  /** The segment on the stimulus clock, from some time before the sweep to the end of its tail. */
  readonly heard: Float64Array;
  /** Index in `heard` where the sweep starts. */
  readonly sweepAt: number;
  readonly sweep: SweepSpec;
  /** Deconvolved from `heard`. */
  readonly ir: ImpulseResponse;
  /** The take's silence at the same rate; its levels are kept, so hand over the same array. */
  readonly silence: Float64Array | null;
  /** Errors outside this band do not count, Hz; left out: all count. */
  readonly playedHz?: readonly [number, number];
  /** Other sweeps of the take that sound in `heard`, each with its own response. */
  readonly others?: readonly OtherSweep[];
}

/** A sweep that overlaps the one in question. */
export interface OtherSweep {
  readonly sweep: SweepSpec;
  /** Index in `heard` where it starts. */
  readonly sweepAt: number;
  readonly ir: ImpulseResponse;
}
