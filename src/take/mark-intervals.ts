import type { Schedule, ScheduledSegment } from './schedule';

/** Number of the mark that opens a segment, and so of its interval on the clock. */
export function intervalOf({ markStarts }: Schedule, { markStart }: ScheduledSegment): number {
  const interval = markStarts.indexOf(markStart);
  if (interval < 0) throw new RangeError(`no mark starts at ${markStart}`);
  return interval;
}

/** The segments that one mark opens, in the order of their sweeps; several overlap. */
export function bundleOf({ segments }: Schedule, interval: ScheduledSegment): ScheduledSegment[] {
  return segments.filter(({ markStart }) => markStart === interval.markStart);
}
