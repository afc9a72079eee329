import { synchronisedSweep } from '../../dsp/signal/sweep';
import type { Channel, ChannelLabel, Layout } from '../system/channel';
import type { Schedule, ScheduledSegment, ScheduledSweep } from '../take/schedule';
import { scheduleId } from '../take/schedule-id';

/** Peak of the bursts: the microphone is held where a speaker is some 15 dB louder than at a seat. */
const stopPeakDb = -24;
const silenceSeconds = 0.4;
const wakeSeconds = 1.5;
const wakeDb = -48;
const settleSeconds = 0.3;
/** After a burst, for its echo to fade. */
const gapSeconds = 0.25;
const endSeconds = 0.4;

/**
 * Bursts of one band differ in length, so that none is taken for another. Both reach into the bass
 * and the middle, so that a channel shows whatever speaker it sounds from.
 */
const bursts = {
  main: { hz: [40, 10_000], seconds: 0.27, more: 0.014 },
  sub: { hz: [25, 3000], seconds: 0.4, more: 0.05 },
} as const;
/** Gaps grow unevenly by so many milliseconds, so that no shift of the row looks like the row. */
const unevenMilliseconds = [0, 31, 7, 53, 17, 43, 11];

/** Bursts that sound once more at the end. */
const repeatedBursts = 2;

export interface StopOptions {
  /** Default 48 kHz. */
  readonly sampleRate?: number;
  /** Those that sound; default all of the layout. */
  readonly channels?: readonly ChannelLabel[];
}

/**
 * One stop of a walk: every channel of the layout sounds once in turn, in wiring order, by a short
 * sweep of its own length. No marks: which sound is whose must show even when the first speaker is
 * silent. The first two sound once more at the end: audio lost in between shifts them. Ten channels
 * last about 10 s.
 */
export function layOutStop(
  layout: Layout,
  { sampleRate = 48_000, channels = layout.channels.map(({ label }) => label) }: StopOptions = {},
): Schedule {
  const samples = (seconds: number): number => Math.round(seconds * sampleRate);
  const silence = { start: 0, length: samples(silenceSeconds) };
  const wake = { start: silence.length, length: samples(wakeSeconds), levelDb: wakeDb };
  let at = wake.start + wake.length + samples(settleSeconds);
  const played = layout.channels.filter(({ label }) => channels.includes(label));
  const order = [...played, ...played.slice(0, repeatedBursts)];
  const segments = order.map((channel, index): ScheduledSegment => {
    const sweep = burstOf(channel, indexOfKind(layout, channel), sampleRate);
    const sweepStart = at;
    const uneven = unevenMilliseconds[index % unevenMilliseconds.length] ?? 0;
    at += sweep.lengthSamples + samples(gapSeconds + uneven / 1000);
    return {
      channel: channel.label,
      markStart: sweepStart,
      sweepStart,
      sweep,
      end: at,
      replayGainDb: 0,
    };
  });
  const schedule = {
    format: 'leadline-take',
    version: 2,
    layout: layout.name,
    sampleRate,
    lengthSamples: at + samples(endSeconds),
    channels: played.map(({ label }) => label),
    reference: played[0]?.label ?? 'FL',
    silence,
    wake,
    mark: { startHz: 2000, endHz: 12_000, lengthSamples: 1440, fadeSamples: 144 },
    markStarts: [],
    peakDb: stopPeakDb,
    segments,
  } as const satisfies Omit<Schedule, 'id'>;
  return { ...schedule, id: scheduleId(schedule) };
}

/** Number of a channel among those whose bursts share its band. */
function indexOfKind({ channels }: Layout, { label, kind }: Channel): number {
  const alike = channels.filter((one) => (one.kind === 'sub') === (kind === 'sub'));
  return alike.findIndex((one) => one.label === label);
}

function burstOf(channel: Channel, index: number, sampleRate: number): ScheduledSweep {
  const { hz, seconds, more } = bursts[channel.kind === 'sub' ? 'sub' : 'main'];
  const length = Math.round((seconds + more * index) * sampleRate);
  const spec = synchronisedSweep(hz[0], hz[1], length, sampleRate);
  const { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples } = spec;
  return { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples };
}
