import type { MicrophoneCalibration } from '../microphone/calibration';
import type { CloseTo } from '../reading/close-to';
import type { Proof } from '../proof/proof';
import type { ProofInput } from '../proof/proof-case';
import type { Proposal } from '../proposal/proposal';
import type { ChannelReading, Readings } from '../reading/reading';
import type { RolloffFinding } from '../reading/rolloff-finding';
import type { TogetherOrder } from '../reading/rolloff-together';
import type { Capture, Rig } from '../rig/port';
import type { ChannelLabel, Layout } from '../system/channel';
import type { SettingsInForce } from '../system/declared-settings';
import type { ProcessorSettings } from '../system/processor-settings';
import type { Schedule } from '../take/schedule';
import type { Inspector } from '../inspect/inspection';
import type { TakeSound } from '../inspect/take-sound';
import type { Trouble } from '../trouble';
import type { StopReading } from '../wirecheck/read-stop';
import type { ChosenDevice, SessionDocument } from './document';
import type { ProposalTerms } from './proposal-terms';
import type { SessionStore } from './session-store';

export interface ReadOptions {
  readonly temperatureCelsius: number;
  readonly referenceDistanceMetres: number;
  readonly simulated: boolean;
  /** Of the microphone; null reads its own response with the speaker's. */
  readonly calibration: MicrophoneCalibration | null;
  /** What the processor had in force; null takes nothing out. */
  readonly inForce: SettingsInForce | null;
  /** The speaker the microphone was held to; null at a seat. */
  readonly close: CloseTo | null;
  readonly signal: AbortSignal;
  readonly onChannel: (reading: ChannelReading, progress: number) => void;
}

/** The devices of this computer. */
export interface DeviceParts {
  list(): Promise<{
    readonly microphones: readonly ChosenDevice[];
    readonly outputs: readonly ChosenDevice[];
  }>;
  /** Opens and closes the microphone once, so that the browser tells names. */
  ask(): Promise<Trouble | null>;
  /** Calls back whenever devices may have come or gone; returns the way to stop. */
  watch(onChange: () => void): () => void;
}

/** What a bench is put together from; tests bring their own. */
export interface BenchParts {
  readonly store: SessionStore;
  readonly devices: DeviceParts;
  /**
   * The chosen rig; a practice room's microphone is held to the speaker `hold` where one is named, and
   * its processor set to `proving`, but for the slips that are hidden in it.
   */
  makeRig(
    document: SessionDocument,
    layout: Layout,
    hold?: ChannelLabel | null,
    proving?: ProcessorSettings | null,
  ): Promise<Rig | Trouble>;
  read(
    schedule: Schedule,
    capture: Pick<Capture, 'samples' | 'sampleRate' | 'loopback'>,
    options: ReadOptions,
  ): Promise<Readings | Trouble>;
  /** Reads one roll-off from all that was heard of a model; never rejects. */
  readTogether(order: TogetherOrder): Promise<RolloffFinding>;
  readStop(schedule: Schedule, capture: Capture): Promise<StopReading | Trouble>;
  /** Someone who looks into the sound of takes, which `load` gives. */
  inspect(load: (takeId: string) => Promise<TakeSound | Trouble>): Inspector;
  /** The whole proposal with its sums, which takes a while; null when stopped or impossible. */
  propose(terms: ProposalTerms, signal: AbortSignal): Promise<Proposal | null>;
  /** Judges takes that prove, which takes a while; null when stopped, or when it failed. */
  judge(input: ProofInput, signal: AbortSignal): Promise<Proof | null>;
  takeFiles(schedule: Schedule, layout: Layout): Promise<{ name: string; blob: Blob }[] | Trouble>;
  readRecording(bytes: Uint8Array, schedule: Schedule): Promise<Capture | Trouble>;
  newId(): string;
  now(): string;
}
