/** Kinds of arrival that are told apart in the tables. */
export type ArrivalKind = 'front' | 'surround' | 'height' | 'leak' | 'ceiling';

/** One estimate of a roll-off frequency against the truth. */
export interface Crossing {
  readonly truthHz: number;
  readonly medianHz: number;
  readonly low: number;
  readonly high: number;
}

/** A level against the truth, dB; null where it was not told. */
export interface LevelFigure {
  /** Estimate less truth. */
  readonly error: number;
  /** The ends of its 90 % interval less the truth. */
  readonly low: number;
  readonly high: number;
}

/** Levels of the subs in one room, and those of the same take in more noise. */
export type SubLevelFigures = Pick<RoomFigures, 'subLevels' | 'subLevelsInNoise'>;

/** What one room gave; plain data, so that a child process can send it. */
export interface RoomFigures {
  readonly seed: number;
  readonly preset: string;
  /**
   * Estimated less true skew, ppm, per signal-to-noise ratio in dB, and the Cramér-Rao bound of its
   * standard deviation; null when no clock was found.
   */
  readonly skew: readonly {
    readonly snrDb: number;
    readonly errorPpm: number | null;
    readonly boundPpm: number;
  }[];
  readonly buffers: {
    readonly planted: number;
    readonly found: number;
    /** Samples. */
    readonly sizeErrors: readonly number[];
    /** Error of the place of each that was found, seconds; null when no place was told. */
    readonly places: readonly { readonly inSweep: boolean; readonly error: number | null }[];
    readonly falseAlarms: number;
    readonly wrongSegment: number;
  };
  /** Error of the distance relative to the reference, metres; null when not told. */
  readonly arrivals: readonly { readonly kind: ArrivalKind; readonly error: number | null }[];
  readonly polarity: readonly ('right' | 'wrong' | 'open')[];
  /** In-room levels relative to the reference's, and those of the same take in more noise. */
  readonly levels: readonly (LevelFigure | null)[];
  readonly levelsInNoise: readonly (LevelFigure | null)[];
  /** The subs' levels in their own band relative to the reference's, likewise. */
  readonly subLevels: readonly (LevelFigure | null)[];
  readonly subLevelsInNoise: readonly (LevelFigure | null)[];
  /** True in-room 500 to 2000 Hz level less the free field's at the same distance, dB. */
  readonly roomGains: readonly number[];
  readonly rolloffs: readonly {
    readonly kind: 'main' | 'sub';
    readonly f3: Crossing | null;
    readonly f6: Crossing | null;
    readonly f10: Crossing | null;
    readonly f6UpperHz: number | null;
    readonly box: 'right' | 'wrong' | 'open';
  }[];
}
