/** A line of the curve chart. All arrays of one trace have one length; x rises. */
export interface CurveTrace {
  readonly name: string;
  /** CSS colour. */
  readonly colour: string;
  readonly stroke: 'solid' | 'dashed' | 'dotted';
  readonly weight?: 'thin' | 'strong' | undefined;
  /** Hz or seconds, by the chart's axis. */
  readonly x: readonly number[];
  /** In the chart's unit; null where nothing can be told. */
  readonly y: readonly (number | null)[];
}

/** What the chart's axes show. */
export interface CurveAxes {
  readonly x:
    | { readonly kind: 'frequency'; readonly low: number; readonly high: number }
    | { readonly kind: 'time'; readonly low: number; readonly high: number };
  readonly y: {
    /** Such as dB, ms, °; empty for none. */
    readonly unit: string;
    readonly digits: number;
    readonly low: number;
    readonly high: number;
  };
}
