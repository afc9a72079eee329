import type { MicrophoneSetup } from '../microphone/calibration';
import type { NoiseReading } from '../noise/noise-state';
import type { CloseTo } from '../reading/close-to';
import type { Readings } from '../reading/reading';
import type { RigKind } from '../rig/port';
import type { PracticeSlip } from '../rig/practice-slips';
import type { DeclaredSettings, SettingsInForce } from '../system/declared-settings';
import type { DeclaredSystem } from '../system/declared-system';
import type { SpeakerModels } from '../system/speaker-models';
import type { ProcessorSheet } from '../system/sheet/processor-sheet';
import type { ProcessorSettings } from '../system/processor-settings';
import type { EarAnswers } from '../wirecheck/ear-check';
import type { WalkSound, WalkStop } from '../wirecheck/walk';
import type { ChannelLabel, GroupId } from '../system/channel';
import type { Schedule } from '../take/schedule';
import type { TakeSettings } from '../take/take-plan';
import type { OwnChoices } from '../proposal/choices';
import type { ProcessorSteps } from '../proposal/proposal';
import type { TypedSettings } from '../proposal/settings-list';

/** Where the microphone stands; takes with one id were made without moving it and are joined. */
export interface Position {
  readonly id: string;
  readonly name: string;
  readonly kind: 'seat' | 'close';
  /** Which speaker the microphone is held to; left out at a seat, and in old sessions. */
  readonly close?: CloseTo | undefined;
}

/** A device as it was chosen: its id here, and its name to find it again by when ids rotate. */
export interface ChosenDevice {
  readonly id: string;
  readonly name: string;
}

/** One take at one position. Its PCM lies beside the document in the store, under captureId. */
export interface TakeRecord {
  readonly id: string;
  readonly position: Position;
  readonly startedAt: string;
  readonly rig: RigKind;
  readonly simulated: boolean;
  readonly schedule: Schedule;
  readonly captureId: string;
  /** The electrical loopback's PCM; null when there was none. */
  readonly loopbackId: string | null;
  readonly captureRate: number;
  readonly notes: readonly string[];
  readonly readings: Readings | null;
  /** What the processor had in force when it was played; left out: nothing is taken out of it. */
  readonly inForce?: SettingsInForce | undefined;
  /** Gain the test signal was played with, dB; left out where another player played it. */
  readonly gainDb?: number | undefined;
  /** Whether the readings rest on what has changed since; they are not shown, but made again. */
  readonly outdated?: boolean | undefined;
  /** What its readings' sentences are written in, see locale/said-in; left out: nobody knows. */
  readonly saidIn?: string | undefined;
  /** What it is for; left out: to read the system as it is. */
  readonly purpose?: TakePurpose | undefined;
  /** What it was played to prove. */
  readonly proves?: Proving | undefined;
}

/** One proof of what was to be typed; takes of one proof are joined. */
export interface Proving {
  readonly id: string;
  readonly settings: ProcessorSettings;
}

/** A take reads the system, or proves the settings that were typed since. */
export type TakePurpose = 'probe' | 'prove';

export type Theme = 'system' | 'light' | 'dark';

/** The session: one immutable value. A change is a named function from document to document. */
export interface SessionDocument {
  readonly format: 'leadline-session';
  readonly version: 2;
  readonly id: string;
  readonly name: string;
  readonly createdAt: string;
  readonly layout: string;
  readonly conditions: {
    readonly temperatureCelsius: number;
    readonly referenceDistanceMetres: number;
  };
  readonly rig: RigKind;
  readonly practice: {
    readonly seed: number;
    /** Which fault is hidden in the wiring, for practice; null: none. */
    readonly hidden: number | null;
    /** What is typed or left wrong in its processor, for practice; empty: nothing. */
    readonly slips: readonly PracticeSlip[];
    /** Gain of the test signal in dB, at most 0. */
    readonly gainDb: number;
  };
  readonly live: {
    /** Null follows the system. */
    readonly output: ChosenDevice | null;
    readonly microphone: ChosenDevice | null;
    /** Gain of the test signal in dB, at most 0. */
    readonly gainDb: number;
    /** Never above this, dB, at most 0. */
    readonly capDb: number;
    /** Output, from 0, of speakers the tuner placed. */
    readonly routes: Readonly<Partial<Record<ChannelLabel, number>>>;
    /** Output a processor replays as LFE, from 0; null when none is. */
    readonly lfeOutput: number | null;
    /** Input the microphone sits on; null: found from the sound. */
    readonly microphoneInput: 0 | 1 | null;
    /** Whether the other input is wired to the reference speaker's output. */
    readonly loopback: boolean;
  };
  readonly microphone: MicrophoneSetup;
  readonly take: TakeSettings;
  /** Where the next take is made. */
  readonly position: Position;
  readonly processor: ProcessorSteps;
  /** Crossovers the tuner set instead of the proposed ones. */
  readonly chosenCrossoverHz: Readonly<Partial<Record<GroupId, number>>>;
  readonly takes: readonly TakeRecord[];
  readonly noiseReadings: readonly NoiseReading[];
  /** Where the speakers stand, the room and the seats. */
  readonly system: DeclaredSystem;
  /** The processor's sheet; null while only its steps are known. */
  readonly sheet: ProcessorSheet | null;
  /** What the tuner heard, channel by channel. */
  readonly earAnswers: EarAnswers;
  /** Stops of the walk with the microphone, newest at each speaker. */
  readonly walk: readonly WalkStop[];
  /** What the channels sounded like from the main seat, for the quick form of the walk; empty before. */
  readonly seatSounds: readonly WalkSound[];
  /** What the processor has in force while it is measured. */
  readonly inForce: DeclaredSettings;
  /** Which speakers are of one model, and their sheets. */
  readonly models: SpeakerModels;
  /** What the tuner decides beside crossover steps. */
  readonly choices: OwnChoices;
  /** What was typed into the processor, by line of the list. */
  readonly typed: TypedSettings;
  /** Notes of the tuner, plain text; empty while there are none. */
  readonly notes: string;
}
