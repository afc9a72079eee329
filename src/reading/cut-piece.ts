import { captureSample, type Clock } from '../../dsp/timing/clock';
import type { ChannelLabel } from '../system/channel';
import { bundleOf, intervalOf } from '../take/mark-intervals';
import type { Schedule, ScheduledSweep } from '../take/schedule';
import type { CapturePiece } from './read-one';
import { harmonicSeconds } from './response-lengths';
import type { Samples } from '../../dsp/signal/samples';

/** More than any response reaches before its sweep, and what interpolation reads beyond the ends. */
const marginSeconds = 0.25;

/** A copy of what a channel's segments, and all that overlap them, take of the capture. */
export function cutPiece(
  samples: Samples,
  clock: Clock,
  schedule: Schedule,
  label: ChannelLabel,
): CapturePiece {
  const { sampleRate } = schedule;
  const before = (sweep: ScheduledSweep): number =>
    Math.ceil(harmonicSeconds({ ...sweep, sampleRate }) * sampleRate);
  const own = schedule.segments.filter(({ channel }) => channel === label);
  const places = own.flatMap((segment) =>
    bundleOf(schedule, segment).flatMap(({ sweepStart, sweep, end }) => {
      const interval = intervalOf(schedule, segment);
      // A mended segment is read by its closing mark too.
      const next = Math.min(interval + 1, clock.segments.length - 1);
      return [interval, next].flatMap((by) =>
        [sweepStart - before(sweep), end].map((at) => captureSample(clock, by, at)),
      );
    }),
  );
  const margin = marginSeconds * clock.captureRate;
  const start = Math.max(0, Math.floor(Math.min(...places) - margin));
  const end = Math.min(samples.length, Math.ceil(Math.max(...places) + margin));
  return { samples: samples.slice(start, Math.max(start, end)), start };
}
