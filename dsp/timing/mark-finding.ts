import type { AlignedMark, MarkTemplate } from './align-marks';

/** Marks of a take as found in a capture. */
export interface MarkFinding {
  readonly captureRate: number;
  readonly stimulusRate: number;
  /** One entry per scheduled mark; null where none was found. Positions in capture samples. */
  readonly marks: readonly (AlignedMark | null)[];
  readonly template: MarkTemplate;
  /**
   * 'this take' when the spacing of the marks is that of the schedule (but for some lost or
   * repeated audio), 'other take' when it is not or when marks stand where silence was scheduled,
   * 'unclear' when too few were found to say.
   */
  readonly take: 'this take' | 'other take' | 'unclear';
  /** Intervals between neighbouring found marks, and how many agree with one skew. */
  readonly intervals: { readonly agreeing: number; readonly measured: number };
  /** Positions of marks that the schedule does not explain, capture samples. */
  readonly strayMarks: readonly number[];
  /** 0 … 1: share of the marks found times their mean match times how sure the take is. */
  readonly confidence: number;
}
