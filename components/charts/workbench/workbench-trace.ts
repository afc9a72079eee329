/** A band between two curves, such as the interval of a fit; arrays of one length, x rising. */
export interface CurveBand {
  /** CSS colour. */
  readonly colour: string;
  /** Hz. */
  readonly x: readonly number[];
  /** dB. */
  readonly low: readonly number[];
  readonly high: readonly number[];
}
