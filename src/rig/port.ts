import type { ChannelLabel } from '../system/channel';
import type { Schedule } from '../take/schedule';
import type { Trouble } from '../trouble';

export type RigKind = 'practice' | 'recording' | 'live';

/** What a rig can do, and what the browser really gave. `unknown` names what it would not tell. */
export interface RigAbilities {
  readonly kind: RigKind;
  readonly name: string;
  readonly simulated: boolean;
  readonly outputs: number;
  readonly inputs: number;
  readonly sampleRate: number;
  readonly unknown: readonly string[];
}

/** Microphone audio of one take, mono, and what the rig knows of it. */
export interface Capture {
  readonly samples: Float32Array;
  /** The second input when it carries the electrical loopback, on the same frames; else null. */
  readonly loopback: Float32Array | null;
  readonly sampleRate: number;
  /** ISO 8601 time of its first sample. */
  readonly startedAt: string;
  readonly rig: RigKind;
  readonly simulated: boolean;
  /** Where the rig saw frames go missing (already filled with zeros), in capture samples. */
  readonly gaps: readonly { readonly atSample: number; readonly samples: number }[];
  /** Facts for the record: device names, rates, settings. */
  readonly notes: readonly string[];
}

export interface PlayProgress {
  readonly phase: 'starting' | 'settling' | 'playing' | 'finishing';
  /** 0 … 1 of the take. */
  readonly progress: number;
  readonly secondsLeft: number;
  /** Position on the stimulus clock, samples. */
  readonly position: number;
}

export interface PlayOptions {
  readonly signal: AbortSignal;
  readonly onProgress?: (progress: PlayProgress) => void;
  /** Gain of the whole stimulus in dB, at most 0. */
  readonly gainDb?: number;
  /** Output, from 0, that feeds each speaker; what is left out goes where the rig thinks best. */
  readonly routes?: OutputRoutes;
  /**
   * Called once, before `play` gives its Trouble, when a take ended early and something was
   * recorded: the capture so far, and the stimulus sample up to which it surely reaches.
   */
  readonly onPartial?: (capture: Capture, heardSamples: number) => void;
}

/** Output, counted from 0, that feeds a speaker. */
export type OutputRoutes = Readonly<Partial<Record<ChannelLabel, number>>>;

/** A stretch of microphone audio as it comes; `frame` counts from the opening of the line. */
export interface CapturedBlock {
  readonly frame: number;
  readonly samples: Float32Array;
  readonly loopback: Float32Array | null;
}

/** Sound that is played end to end on one speaker. `period` has peak 1 at most, at the line's rate. */
export interface LineSound {
  readonly channel: ChannelLabel;
  readonly period: Float32Array;
  /** At most 0. */
  readonly gainDb: number;
}

export interface LineOptions {
  readonly signal: AbortSignal;
  readonly routes?: OutputRoutes;
  /** Called with every stretch, in order; a jump of `frame` means lost audio. */
  readonly onBlock: (block: CapturedBlock) => void;
  /** The line ended by itself: device gone, page hidden, rate changed. Sound is off already. */
  readonly onEnd: (trouble: Trouble) => void;
}

/** An open line to one microphone and, while something plays, to one speaker. */
export interface Line {
  readonly sampleRate: number;
  readonly simulated: boolean;
  /** Facts for the record: device names, rates, settings. */
  readonly notes: readonly string[];
  /** What the browser would not tell. */
  readonly unknown: readonly string[];
  /** Fades out what plays and fades this in, 50 ms each; null is silence. */
  play(sound: LineSound | null): void;
  /** Moves the gain of what plays in 50 ms, at most 0 dB. */
  setGain(gainDb: number): void;
  /** Silence now; everything held is let go. Safe to call twice. */
  close(): void;
}

/** Level of the microphone, as the strip at the foot shows it. */
export interface MicLevel {
  readonly rmsDb: number;
  readonly peakDb: number;
  readonly clipped: boolean;
}

/**
 * The port to loudspeakers and microphone. An abort silences everything at once and gives a
 * Trouble of kind 'stopped'. A rig never throws for what the world does.
 */
export interface Rig {
  readonly kind: RigKind;
  readonly simulated: boolean;
  describe(): Promise<RigAbilities | Trouble>;
  play(schedule: Schedule, options: PlayOptions): Promise<Capture | Trouble>;
  /** Opens a line for live noise, level and listening. Call from inside a click. */
  open(options: LineOptions): Promise<Line | Trouble>;
  /** Calls back with the level while playing or listening; returns the way to stop listening. */
  monitor(listener: (level: MicLevel) => void): () => void;
}
