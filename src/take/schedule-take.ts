import { seededRandom } from '../../dsp/signal/random';
import { synchronisedSweep } from '../../dsp/signal/sweep';
import type { Channel, Layout } from '../system/channel';
import type { Schedule, ScheduledSegment, ScheduledSweep } from './schedule';
import { hashText, scheduleId } from './schedule-id';

export interface ScheduleOptions {
  /** Stimulus rate, Hz; default 48000. */
  readonly sampleRate?: number;
  /** Length of each sweep, seconds, 0.5 to 30; default 2^17 samples at 48 kHz. */
  readonly sweepSeconds?: number;
  /** Peak of marks and sweeps, dB re full scale, −60 to 0; default −12. */
  readonly peakDb?: number;
}

/** Seconds of everything but the sweeps. */
const silenceSeconds = 4;
const wakeSeconds = 2;
const settleSeconds = 0.5;
const markSeconds = 0.03;
const guardSeconds = 0.3;
const tailSeconds = 1;
const endSeconds = 1;
/** Tails differ by whole milliseconds below this, so that no two takes space their marks alike. */
const fingerprintMilliseconds = 64;

const sweepHz = { main: [10, 20000], sub: [10, 500] } as const;

/**
 * Lays out one take: silence, wake-up noise, then mark, guard, sweep and tail per speaker, a last
 * mark, silence. Sweeps reach 10 Hz to 20 kHz, on subs 10 to 500 Hz (slower, so more signal in
 * the bass). Throws RangeError for options out of range. Form of the take: common practice.
 */
export function scheduleTake(layout: Layout, options: ScheduleOptions = {}): Schedule {
  const sampleRate = options.sampleRate ?? 48000;
  const sweepSeconds = options.sweepSeconds ?? 2 ** 17 / 48000;
  const peakDb = options.peakDb ?? -12;
  requireWithin('sampleRate', sampleRate, 44100, 192000);
  requireWithin('sweepSeconds', sweepSeconds, 0.5, 30);
  requireWithin('peakDb', peakDb, -60, 0);
  const samples = (seconds: number): number => Math.round(seconds * sampleRate);
  const fingerprint = seededRandom(
    hashText(`${layout.name} ${sampleRate} ${sweepSeconds} ${peakDb}`),
  );
  const markLength = samples(markSeconds);
  const wakeStart = samples(silenceSeconds);

  let at = wakeStart + samples(wakeSeconds) + samples(settleSeconds);
  const segments: ScheduledSegment[] = [];
  for (const channel of layout.channels) {
    const sweepStart = at + markLength + samples(guardSeconds);
    const sweep = sweepFor(channel, samples(sweepSeconds), sampleRate);
    const extra = Math.floor(fingerprint() * fingerprintMilliseconds) / 1000;
    const end = sweepStart + sweep.lengthSamples + samples(tailSeconds + extra);
    segments.push({
      channel: channel.label,
      markStart: at,
      sweepStart,
      sweep,
      end,
      replayGainDb: 0,
    });
    at = end;
  }
  const schedule = {
    format: 'leadline-take',
    version: 2,
    layout: layout.name,
    sampleRate,
    lengthSamples: at + markLength + samples(endSeconds),
    channels: layout.channels.map((channel) => channel.label),
    reference: referenceOf(layout).label,
    silence: { start: 0, length: wakeStart },
    wake: { start: wakeStart, length: samples(wakeSeconds), levelDb: -42 },
    mark: {
      startHz: 2000,
      endHz: 12000,
      lengthSamples: markLength,
      fadeSamples: Math.round(markLength / 10),
    },
    markStarts: [...segments.map((segment) => segment.markStart), at],
    peakDb,
    segments,
  } as const;
  return { ...schedule, id: scheduleId(schedule) };
}

function sweepFor(channel: Channel, lengthSamples: number, sampleRate: number): ScheduledSweep {
  const [low, high] = sweepHz[channel.kind === 'sub' ? 'sub' : 'main'];
  const spec = synchronisedSweep(low, high, lengthSamples, sampleRate);
  const { startHz, endHz, fadeInSamples, fadeOutSamples } = spec;
  return { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples };
}

/** The speaker that plays the marks: the first, front left in every layout. */
function referenceOf(layout: Layout): Channel {
  const first = layout.channels[0];
  if (!first) throw new RangeError(`layout ${layout.name} has no channels`);
  return first;
}

function requireWithin(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} must lie between ${low} and ${high}, got ${value}`);
  }
}
