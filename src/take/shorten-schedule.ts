import type { Schedule } from './schedule';
import { scheduleId } from './schedule-id';

/**
 * The schedule of a take that ended early, after `heardSamples` of the stimulus clock: the segments
 * whose closing mark was played whole by then, as a take of its own. Null when there is none, or
 * when the reference speaker is not among them; the schedule itself when all were played.
 */
export function shortenSchedule(schedule: Schedule, heardSamples: number): Schedule | null {
  const { mark, markStarts } = schedule;
  const played = markStarts.filter((start) => start + mark.lengthSamples <= heardSamples);
  if (played.length === markStarts.length) return schedule;
  const lastMark = played.at(-1);
  if (lastMark === undefined) return null;
  const segments = schedule.segments.filter(({ end }) => end <= lastMark);
  const swept = new Set(segments.map(({ channel }) => channel));
  if (!swept.has(schedule.reference)) return null;
  const shorter = {
    ...schedule,
    lengthSamples: lastMark + mark.lengthSamples,
    channels: schedule.channels.filter((channel) => swept.has(channel)),
    markStarts: played,
    segments,
  };
  return { ...shorter, id: scheduleId(shorter) };
}

/** Longer than any output and input are late together, seconds; how late they are is not known. */
export const latencySeconds = 2;

/**
 * Stimulus sample up to which a broken capture is kept for its shortened schedule: late enough to
 * hold its last mark, too early for the next one, which belongs to nothing that was finished.
 */
export function partialEnd({ markStarts, sampleRate }: Schedule, shorter: Schedule): number {
  const last = shorter.markStarts.at(-1) ?? 0;
  const next = markStarts.find((start) => start > last) ?? Infinity;
  return shorter.lengthSamples + Math.min(latencySeconds * sampleRate, 0.9 * (next - last));
}
