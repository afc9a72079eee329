/** Audio lost or repeated between two neighbouring marks. */
export interface ClockStep {
  /** It lies between mark `interval` and mark `interval` + 1, inside the segment of that number. */
  readonly interval: number;
  /** Where marks between were missing: the last interval it may lie in; else the same. */
  readonly lastInterval: number;
  readonly kind: 'lost' | 'repeated';
  /** Capture samples, positive, not necessarily whole. */
  readonly samples: number;
  /** 90 % interval of `samples`. */
  readonly interval90: readonly [number, number];
}

/** Where one segment (from its opening mark to the next) lies in the capture. */
export interface SegmentClock {
  /** The stimulus sample `stimulusAt` stands at the capture sample `captureAt`, fractional. */
  readonly stimulusAt: number;
  readonly captureAt: number;
  /**
   * 'marked' by its own opening mark; 'between' marks whose interval shows no lost audio, its own
   * being missing; 'doubtful' when audio may have been lost between the nearest mark and this one.
   */
  readonly standing: 'marked' | 'between' | 'doubtful';
  /** Standard deviation of captureAt, capture samples. */
  readonly deviation: number;
  /** Net audio lost (+) or repeated (−) from this opening mark to the next, capture samples. */
  readonly lostSamples: number;
}

/** How the capture's clock runs against the stimulus clock. */
export interface Clock {
  readonly captureRate: number;
  readonly stimulusRate: number;
  /** Capture samples per stimulus sample: ratio of the nominal rates × (1 + skew). */
  readonly ratio: number;
  readonly skewPpm: number;
  /** 90 % interval of skewPpm. */
  readonly skewInterval: readonly [number, number];
  /** False when every interval had lost audio, so that the skew is a guess of 0. */
  readonly skewKnown: boolean;
  readonly steps: readonly ClockStep[];
  /** One per scheduled mark; the last one belongs to the closing mark. */
  readonly segments: readonly SegmentClock[];
}

/** Capture sample of a stimulus sample, by the opening mark of segment `index`. Throws RangeError. */
export function captureSample(clock: Clock, index: number, stimulusSample: number): number {
  const segment = clock.segments[index];
  if (!segment) {
    throw new RangeError(`segment must lie in 0 … ${clock.segments.length - 1}, got ${index}`);
  }
  return segment.captureAt + clock.ratio * (stimulusSample - segment.stimulusAt);
}
