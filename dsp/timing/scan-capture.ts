import type { Samples } from '../signal/samples';

/** What one look at every sample of a capture tells. */
export interface CaptureScan {
  /** Index of the first sample that is no finite number; −1 when all are. */
  readonly notNumber: number;
  /** Largest magnitude; 0 for silence. */
  readonly peak: number;
  /** Smallest magnitude that is not 0: a step of the converter as far as it shows; at most 1. */
  readonly step: number;
}

/** One pass over a whole capture; it stops at what is no number. Common practice. */
export function scanCapture(samples: Samples): CaptureScan {
  let peak = 0;
  let step = 1;
  for (let n = 0; n < samples.length; n++) {
    const value = Math.abs(samples[n] ?? 0);
    if (!(value < Infinity)) return { notNumber: n, peak, step };
    if (value > peak) peak = value;
    if (value < step && value > 0) step = value;
  }
  return { notNumber: -1, peak, step };
}
