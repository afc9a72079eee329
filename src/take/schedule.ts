import type { ChannelLabel } from '../system/channel';

/** Exponential sweep of one channel; see dsp/signal/sweep. */
export interface ScheduledSweep {
  readonly startHz: number;
  readonly endHz: number;
  readonly lengthSamples: number;
  readonly fadeInSamples: number;
  readonly fadeOutSamples: number;
}

/**
 * One sweep of one speaker. Positions are samples of the stimulus clock from the take's start.
 * A speaker has several when its sweeps are averaged. Segments that share a mark overlap: the next
 * sweep starts before the room has forgotten the one before.
 */
export interface ScheduledSegment {
  readonly channel: ChannelLabel;
  /** Start of the mark that opens this segment (played by the reference speaker). */
  readonly markStart: number;
  readonly sweepStart: number;
  readonly sweep: ScheduledSweep;
  /** First sample after the segment's tail. */
  readonly end: number;
  /** How much louder than the file the processor replays this channel, dB; 10 on LFE, else 0. */
  readonly replayGainDb: number;
}

/** What is played when: plain data that travels with the capture. Its JSON form is take.json. */
export interface Schedule {
  readonly format: 'leadline-take';
  readonly version: 2;
  /** Hash of everything else in the schedule. */
  readonly id: string;
  readonly layout: string;
  readonly sampleRate: number;
  readonly lengthSamples: number;
  /** In the order of the WAV's channels. */
  readonly channels: readonly ChannelLabel[];
  /** The speaker that plays every mark. */
  readonly reference: ChannelLabel;
  /** Nothing plays; the noise floor is read here. */
  readonly silence: { readonly start: number; readonly length: number };
  /** Quiet noise on every channel, so that receivers unmute and subs wake. */
  readonly wake: { readonly start: number; readonly length: number; readonly levelDb: number };
  readonly mark: {
    readonly startHz: number;
    readonly endHz: number;
    readonly lengthSamples: number;
    readonly fadeSamples: number;
  };
  /** Starts of all marks: one per segment or bundle of overlapping segments, and a last one. Their spacing is the take's fingerprint. */
  readonly markStarts: readonly number[];
  /** Peak of marks and sweeps, dB re full scale. */
  readonly peakDb: number;
  readonly segments: readonly ScheduledSegment[];
}
