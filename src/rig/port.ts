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
  /** Calls back with the level while playing; returns the way to stop listening. */
  monitor(listener: (level: MicLevel) => void): () => void;
}
