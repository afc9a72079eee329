import type { Readings } from '../reading/reading';
import type { RigKind } from '../rig/port';
import type { GroupId } from '../system/channel';
import type { Schedule } from '../take/schedule';
import type { ProcessorSteps } from '../proposal/proposal';

/** One take at one position. Its PCM lies beside the document in the store, under captureId. */
export interface TakeRecord {
  readonly id: string;
  readonly position: { readonly name: string; readonly kind: 'seat' | 'close' };
  readonly startedAt: string;
  readonly rig: RigKind;
  readonly simulated: boolean;
  readonly schedule: Schedule;
  readonly captureId: string;
  readonly captureRate: number;
  readonly notes: readonly string[];
  readonly readings: Readings | null;
}

export type Theme = 'system' | 'light' | 'dark';

/** The session: one immutable value. A change is a named function from document to document. */
export interface SessionDocument {
  readonly format: 'leadline-session';
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  readonly createdAt: string;
  readonly layout: string;
  readonly conditions: {
    readonly temperatureCelsius: number;
    readonly referenceDistanceMetres: number;
  };
  readonly rig: RigKind;
  readonly practice: { readonly seed: number };
  readonly live: {
    readonly outputId: string | null;
    readonly microphoneId: string | null;
    /** Gain of the test signal in dB, at most 0. */
    readonly gainDb: number;
  };
  readonly processor: ProcessorSteps;
  /** Crossovers the tuner set instead of the proposed ones. */
  readonly chosenCrossoverHz: Readonly<Partial<Record<GroupId, number>>>;
  readonly takes: readonly TakeRecord[];
}
