/** Why a harmonic cannot be told at a frequency. */
export type HarmonicLimit =
  /** The take's noise, or hum, may be all there is. */
  | 'noise'
  /** The tail of the next higher harmonic may be all there is, or its own is cut off. */
  | 'decay'
  /** It lies beyond the end of the sweep. */
  | 'band';

/** A distortion product against the frequency of its fundamental; null where it cannot be told. */
export interface HarmonicCurve {
  /** Level re the fundamental, dB. */
  readonly db: readonly (number | null)[];
  /**
   * What it would have to exceed to be told, re the fundamental, dB; where it is not told, what it
   * does not exceed. Null where nothing is known.
   */
  readonly floorDb: readonly (number | null)[];
  /** Null where it is told. */
  readonly limitedBy: readonly (HarmonicLimit | null)[];
}

export interface Harmonic extends HarmonicCurve {
  readonly order: number;
}

/** Harmonics of one response; all arrays of one length. */
export interface HarmonicReading {
  /** Frequencies of the fundamental, 1/6 octave apart. */
  readonly hz: readonly number[];
  /** Level of the linear response in 1/6 octave, dB, and of the noise in it. */
  readonly fundamentalDb: readonly number[];
  readonly fundamentalNoiseDb: readonly number[];
  /** Orders 2 to 5. */
  readonly harmonics: readonly Harmonic[];
  /** Power sum of those that are told; null where what may hide is as strong. */
  readonly total: HarmonicCurve;
  /** From here up the room's decay leaves the second and third harmonic apart, Hz; null: nowhere. */
  readonly apartFromHz: number | null;
}
