import { markSignal } from '../../dsp/signal/mark';
import { sweepSignal } from '../../dsp/signal/sweep';
import type { ChannelLabel } from '../system/channel';
import type { Schedule } from './schedule';
import { wakeNoise } from './wake-noise';

/** One stretch of sound on one channel. `samples` are scaled to full scale 1. */
export interface ScheduledEvent {
  readonly channel: ChannelLabel;
  readonly kind: 'wake' | 'mark' | 'sweep';
  readonly startSample: number;
  readonly samples: Float32Array;
}

/**
 * All that a schedule plays on all channels or `only` one; everything else is silence. What the
 * processor replays louder is played that much quieter. Equal sweeps share one array.
 */
export function scheduleEvents(schedule: Schedule, only?: ChannelLabel): ScheduledEvent[] {
  const { sampleRate, wake, reference } = schedule;
  const peak = 10 ** (schedule.peakDb / 20);
  const wanted = (channel: ChannelLabel): boolean => only === undefined || channel === only;
  const events: ScheduledEvent[] = [];
  const replayed = (channel: ChannelLabel): number =>
    schedule.segments.find((one) => one.channel === channel)?.replayGainDb ?? 0;
  for (const [index, channel] of schedule.channels.entries()) {
    if (!wanted(channel)) continue;
    const levelDb = wake.levelDb - replayed(channel);
    const samples = wakeNoise(wake.length, sampleRate, levelDb, index + 1);
    events.push({ channel, kind: 'wake', startSample: wake.start, samples });
  }
  if (wanted(reference)) {
    const gain = peak * 10 ** (-replayed(reference) / 20);
    const samples = scaled(markSignal({ ...schedule.mark, sampleRate }), gain);
    for (const startSample of schedule.markStarts) {
      events.push({ channel: reference, kind: 'mark', startSample, samples });
    }
  }
  const sweeps = new Map<string, Float32Array>();
  for (const { channel, sweep, sweepStart, replayGainDb } of schedule.segments) {
    if (!wanted(channel)) continue;
    const gain = peak * 10 ** (-replayGainDb / 20);
    const key = JSON.stringify([gain, Object.values(sweep)]);
    const samples = sweeps.get(key) ?? scaled(sweepSignal({ ...sweep, sampleRate }), gain);
    sweeps.set(key, samples);
    events.push({ channel, kind: 'sweep', startSample: sweepStart, samples });
  }
  return events;
}

/** PCM of one channel of the stimulus, lengthSamples long; zero where it is silent. */
export function renderChannel(schedule: Schedule, channel: ChannelLabel): Float32Array {
  const pcm = new Float32Array(schedule.lengthSamples);
  for (const event of scheduleEvents(schedule, channel)) pcm.set(event.samples, event.startSample);
  return pcm;
}

function scaled(signal: Float64Array, gain: number): Float32Array {
  return Float32Array.from(signal, (value) => value * gain);
}
