import { referenceChannel } from '../system/layout';
import type { Layout } from '../system/channel';
import { layOutTake } from './lay-out-take';
import type { Schedule } from './schedule';

export interface ScheduleOptions {
  /** Stimulus rate, Hz; default 48000. */
  readonly sampleRate?: number;
  /** Length of each sweep, seconds, 0.5 to 30; default 2^17 samples at 48 kHz. */
  readonly sweepSeconds?: number;
  /** Peak of marks and sweeps, dB re full scale, −60 to 0; default −12. */
  readonly peakDb?: number;
  /** Sweeps of each speaker, 1 to 8; default 1. */
  readonly averages?: number;
  /** Silence between two speakers beside the tail, 0 to 10 s; default 0. */
  readonly pauseSeconds?: number;
}

export const defaultSweepSeconds = 2 ** 17 / 48000;
export const defaultPeakDb = -12;

/**
 * One take of a whole layout, every speaker on a channel of its own: see layOutTake. Sweeps reach
 * 10 Hz to 20 kHz, on subs 10 to 500 Hz (slower, so more signal in the bass). Throws RangeError
 * for options out of range.
 */
export function scheduleTake(layout: Layout, options: ScheduleOptions = {}): Schedule {
  const {
    sampleRate = 48000,
    sweepSeconds = defaultSweepSeconds,
    peakDb = defaultPeakDb,
    averages = 1,
    pauseSeconds = 0,
  } = options;
  requireWithin('sampleRate', sampleRate, 44100, 192000);
  requireWithin('sweepSeconds', sweepSeconds, 0.5, 30);
  requireWithin('peakDb', peakDb, -60, 0);
  requireWithin('averages', averages, 1, 8);
  requireWithin('pauseSeconds', pauseSeconds, 0, 10);
  if (!Number.isInteger(averages)) throw new RangeError(`averages must be whole, got ${averages}`);
  return layOutTake({
    layoutName: layout.name,
    channels: layout.channels,
    reference: referenceChannel(layout),
    sampleRate,
    sweepSeconds,
    peakDb,
    averages,
    pauseSeconds,
    decaySeconds: null,
    attempt: 0,
    replayGainDb: () => 0,
  });
}

export function requireWithin(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} must lie between ${low} and ${high}, got ${value}`);
  }
}
