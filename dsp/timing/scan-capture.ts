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

/** Samples looked at in one call: what is called often is compiled once, for good. */
const stretch = 16_384;

/** One pass over a whole capture; it stops at what is no number. Common practice. */
export function scanCapture(samples: Samples): CaptureScan {
  const found = { peak: 0, step: 1 };
  for (let from = 0; from < samples.length; from += stretch) {
    const bad = scanStretch(samples, from, Math.min(from + stretch, samples.length), found);
    if (bad >= 0) return { notNumber: bad, ...found };
  }
  return { notNumber: -1, ...found };
}

function scanStretch(
  samples: Samples,
  from: number,
  to: number,
  found: { peak: number; step: number },
): number {
  let { peak, step } = found;
  let bad = -1;
  for (let n = from; n < to; n++) {
    const value = Math.abs(samples[n] ?? 0);
    if (!(value < Infinity)) {
      bad = n;
      break;
    }
    if (value > peak) peak = value;
    if (value < step && value > 0) step = value;
  }
  found.peak = peak;
  found.step = step;
  return bad;
}
