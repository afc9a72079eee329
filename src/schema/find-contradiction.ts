import { msg, str } from '@lit/localize';
import type { Schedule, ScheduledSegment } from '../take/schedule';

/**
 * The first place where a schedule's numbers cannot all be true, as part of a sentence; null when
 * there is none. What passes can be rendered.
 */
export function findContradiction(schedule: Schedule): string | null {
  const { silence, wake, lengthSamples, mark, sampleRate, segments, markStarts } = schedule;
  const wakeEnd = wake.start + wake.length;
  const nyquist = sampleRate / 2;
  if (silence.start + silence.length > wake.start) return msg('"silence" reaches into "wake"');
  if (wakeEnd > (markStarts[0] ?? 0)) return msg('"wake" reaches into the first mark');
  if (!(mark.startHz < mark.endHz && mark.endHz < nyquist)) {
    return msg(
      str`"mark" runs from ${mark.startHz} to ${mark.endHz} Hz at a rate of ${sampleRate} Hz`,
    );
  }
  if (2 * mark.fadeSamples > mark.lengthSamples) return msg('"mark" is shorter than its fades');
  return (
    channelsContradict(schedule) ??
    firstOf(segments, (segment, index) => segmentContradicts(schedule, segment, index)) ??
    firstOf(segments, (segment, index) => speakerContradicts(segments, segment, index)) ??
    ((markStarts.at(-1) ?? 0) + mark.lengthSamples > lengthSamples
      ? msg(str`the take ends at sample ${lengthSamples}, before its last mark does`)
      : null)
  );
}

function channelsContradict(schedule: Schedule): string | null {
  const { channels, reference, segments, markStarts } = schedule;
  if (new Set(channels).size < channels.length) return msg('"channels" names one channel twice');
  if (!channels.includes(reference))
    return msg(str`"reference" ${reference} is not among "channels"`);
  const played = new Set(segments.map((segment) => segment.channel));
  const stranger = [...played].find((channel) => !channels.includes(channel));
  if (stranger) return msg(str`a segment plays ${stranger}, which is not among "channels"`);
  const unheard = channels.find((channel) => !played.has(channel));
  if (unheard) return msg(str`no segment plays ${unheard}`);
  const opening = new Set(segments.map((segment) => segment.markStart));
  const idle = markStarts.slice(0, -1).findIndex((start) => !opening.has(start));
  if (idle >= 0) return msg(str`mark ${idle} of "markStarts" opens no segment`);
  const unordered = markStarts.findIndex((start, at) => start <= (markStarts[at - 1] ?? -1));
  return unordered < 0
    ? null
    : msg(str`mark ${unordered} of "markStarts" does not come after the one before`);
}

function segmentContradicts(
  { markStarts, mark, sampleRate, segments }: Schedule,
  { markStart, sweepStart, sweep, end }: ScheduledSegment,
  index: number,
): string | null {
  const name = `"segments[${index}]"`;
  const opened = markStarts.indexOf(markStart);
  if (opened < 0 || opened === markStarts.length - 1) {
    return msg(str`${name} starts at ${markStart}, where no mark opens a segment`);
  }
  if (sweepStart < markStart + mark.lengthSamples)
    return msg(str`the sweep of ${name} overlaps its mark`);
  if (sweepStart <= (segments[index - 1]?.sweepStart ?? -1)) {
    return msg(str`the sweep of ${name} does not start after the one before`);
  }
  if (sweepStart + sweep.lengthSamples > end)
    return msg(str`the sweep of ${name} ends after its segment`);
  if (end > (markStarts[opened + 1] ?? 0))
    return msg(str`${name} ends after the next mark has begun`);
  if (!(sweep.startHz < sweep.endHz && sweep.endHz < sampleRate / 2)) {
    return msg(str`the sweep of ${name} runs from ${sweep.startHz} to ${sweep.endHz} Hz`);
  }
  if (sweep.fadeInSamples + sweep.fadeOutSamples > sweep.lengthSamples) {
    return msg(str`the sweep of ${name} is shorter than its fades`);
  }
  return null;
}

/** Several sweeps of one speaker: one after another, replayed alike. */
function speakerContradicts(
  segments: readonly ScheduledSegment[],
  { channel, sweepStart, replayGainDb }: ScheduledSegment,
  index: number,
): string | null {
  const before = segments.slice(0, index).findLast((one) => one.channel === channel);
  if (!before) return null;
  const name = `"segments[${index}]"`;
  if (sweepStart < before.sweepStart + before.sweep.lengthSamples) {
    return msg(str`the sweep of ${name} begins while ${channel} still plays the one before`);
  }
  return replayGainDb === before.replayGainDb
    ? null
    : msg(str`"replayGainDb" of ${name} differs from another of ${channel}`);
}

function firstOf<Item>(
  items: readonly Item[],
  finding: (item: Item, index: number) => string | null,
): string | null {
  for (const [index, item] of items.entries()) {
    const found = finding(item, index);
    if (found !== null) return found;
  }
  return null;
}
