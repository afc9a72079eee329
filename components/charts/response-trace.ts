import type { ChannelReading, Estimate, ReadingCurves } from '../../src/reading/reading';
import { isNumber } from '../../src/locale/number-text';

/** One speaker's curves as the response chart takes them; the first trace is the one examined. */
export interface ResponseTrace {
  /** What the trace is called: the speaker's label, with what tells it from others of the speaker. */
  readonly channel: string;
  /** CSS colour. */
  readonly colour: string;
  readonly curves: ReadingCurves;
  readonly marks: readonly RolloffMark[];
}

/** Where the fitted roll-off is so many decibels down, with its 90 % interval. */
export interface RolloffMark {
  readonly downDb: 3 | 6 | 10;
  /** Where that is on the axis: so far below the level of the fit's flat part. */
  readonly levelDb: number;
  readonly hz: number;
  readonly lowHz: number;
  readonly highHz: number;
}

function markOf(downDb: 3 | 6 | 10, estimate: Estimate, flatDb: number): RolloffMark[] {
  const [low, high] = estimate.interval;
  if (!isNumber(estimate.median) || estimate.median <= 0) return [];
  return [
    {
      downDb,
      levelDb: flatDb - downDb,
      hz: estimate.median,
      lowHz: isNumber(low) && low > 0 ? low : estimate.median,
      highHz: isNumber(high) && high > 0 ? high : estimate.median,
    },
  ];
}

/** The trace of a reading; null when the reading has no curves. */
export function traceOf(reading: ChannelReading, colour: string): ResponseTrace | null {
  if (!reading.curves) return null;
  const rolloff = reading.rolloff;
  const flatDb = reading.curves.fit?.db.findLast(isNumber) ?? 0;
  return {
    channel: reading.channel,
    colour,
    curves: reading.curves,
    marks: rolloff
      ? [
          ...markOf(3, rolloff.f3Hz, flatDb),
          ...markOf(6, rolloff.f6Hz, flatDb),
          ...markOf(10, rolloff.f10Hz, flatDb),
        ]
      : [],
  };
}
