import type { NoiseRequest, NoiseState } from '../noise/noise-state';
import type { Proposal } from '../proposal/proposal';
import type { ChannelReading, Readings } from '../reading/reading';
import type { RolloffTogether } from '../reading/rolloff-together';
import type { MicLevel, PlayProgress, RigAbilities, RigKind } from '../rig/port';
import type { Weighting } from '../../dsp/level/weighting';
import type {
  ClimbRequest,
  ClimbResult,
  ClimbState,
  Exposure,
  SoundLevel,
} from '../soundlevel/sound-level';
import type { ChannelLabel, Layout } from '../system/channel';
import type { Inspector } from '../inspect/inspection';
import type { Trouble } from '../trouble';
import type { ProofState, ProofTakes } from './derive-proof';
import type { ChosenDevice, Position, SessionDocument, TakePurpose } from './document';
import type { HistoryNames } from './history/histories';
import type { Sessions, SessionsState } from './shelf/sessions';

/** What the bench is doing right now. */
export type Activity =
  | { readonly kind: 'idle' }
  | {
      readonly kind: 'playing';
      readonly play: PlayProgress;
      readonly channel: string | null;
      /** Which take of how many this position needs, from 1. */
      readonly part: { readonly number: number; readonly of: number };
      /** Speakers this take repeats because they came out damaged; empty or left out else. */
      readonly repeating?: readonly ChannelLabel[];
    }
  /** One stop of the walk check plays. */
  | {
      readonly kind: 'walking';
      readonly at: WalkPosition;
      readonly play: PlayProgress;
      /** The channel that sounds, null between. */
      readonly channel: ChannelLabel | null;
    }
  /** The tuner must do something in the room before it goes on; see Bench.proceed. */
  | { readonly kind: 'waiting'; readonly prompt: Prompt }
  | { readonly kind: 'noise'; readonly noise: NoiseState }
  | { readonly kind: 'climbing'; readonly climb: ClimbState }
  | {
      readonly kind: 'reading';
      readonly progress: number;
      readonly secondsLeft: number | null;
      /** Readings that have already arrived, in take order. */
      readonly channels: readonly ChannelReading[];
    };

/** Where the microphone is on a walk: held to a speaker, or at the main seat. */
export type WalkPosition = ChannelLabel | 'seat';

/** What to do in the room before the next part, in sentences, in order. */
export interface Prompt {
  readonly title: string;
  readonly steps: readonly string[];
}

/** What the screens show; a new object after every change. */
export interface BenchState {
  readonly document: SessionDocument;
  readonly layout: Layout;
  /** Readings of the current position, its takes joined; null when there are none. */
  readonly readings: Readings | null;
  /** Roll-offs read together from seats and speakers of one model; those that still stand. */
  readonly together: readonly RolloffTogether[];
  /** Null until there are readings, and while what they give together is still read. */
  readonly proposal: Proposal | null;
  /** The newest takes through the processor; null until there are some here. */
  readonly proving: ProofTakes | null;
  /** What these prove; null until they are judged. */
  readonly proof: ProofState | null;
  readonly activity: Activity;
  /** The last thing that went wrong, until dismissed. */
  readonly trouble: Trouble | null;
  readonly mic: MicLevel | null;
  /** What the sound level meter reads while a microphone is open, else null. */
  readonly soundLevel: SoundLevel | null;
  readonly abilities: RigAbilities | null;
  /** Speakers of the current position whose segments came out damaged and are worth repeating, and
   * those that its takes never came to because they ended early. */
  readonly toRepeat: readonly ChannelLabel[];
  readonly exposure: Exposure;
  /** How the last climb ended; null until there was one, or after devices changed. */
  readonly climbed: ClimbResult | null;
  /** Devices as they are now, for the pickers; looked at again whenever they change. */
  readonly devices: Devices | null;
  readonly saved: 'saved' | 'saving' | 'failed' | 'elsewhere';
  readonly history: HistoryNames;
  readonly sessions: SessionsState;
}

/** Microphones and outputs as the browser tells them. */
export interface Devices {
  readonly microphones: readonly ChosenDevice[];
  /** Empty in browsers that do not tell. */
  readonly outputs: readonly ChosenDevice[];
  /** What came or went since last looked, in a sentence; null when nothing did. */
  readonly change: string | null;
}

/** The bench as the screens use it. Nothing here throws for what the world does. */
export interface Bench {
  readonly state: BenchState;
  /** Calls back after every change; returns the way to unsubscribe. */
  subscribe(listener: () => void): () => void;
  /** A named change of the document; saved as it happens, and undone by its name. */
  change(name: string, change: (document: SessionDocument) => SessionDocument): void;
  /** Takes back the newest change; refused while something runs. */
  undo(): void;
  /** Brings back what was undone last; refused while something runs. */
  redo(): void;
  /** The sessions of this browser. */
  readonly sessions: Sessions;
  /** Takes a layout name; a name that means nothing leaves the layout and raises the trouble. */
  setLayout(name: string): void;
  setRig(kind: RigKind): void;
  /** Plays a take on the chosen rig, reads it, proposes. Call from inside a click. */
  startTake(): Promise<void>;
  /** Repeats these speakers at the current position and joins them to what is there. */
  repeatSegments(channels: readonly ChannelLabel[]): Promise<void>;
  /**
   * Plays through the processor as it will play, and judges what was typed: all speakers, or those
   * of a failed line alone. Call from inside a click.
   */
  startProof(channels?: readonly ChannelLabel[]): Promise<void>;
  /** The tuner has done what the prompt asks. */
  proceed(): void;
  /** Plays live noise, or listens, until stopped. Call from inside a click. */
  startNoise(request: NoiseRequest): Promise<void>;
  /** Changes the running noise: speaker, band, level, resolution. */
  changeNoise(request: NoiseRequest): void;
  /** Keeps the running noise's reading in the session. */
  keepNoise(): void;
  /** Climbs from quiet to a level takes can use, and sets it. Call from inside a click. */
  climbLevel(request: ClimbRequest): Promise<void>;
  /** Listens for a second and calibrates the sound level: `db` is what the calibrator or meter says. */
  calibrateSoundLevel(db: number, how: 'calibrator' | 'sound level meter'): Promise<void>;
  /**
   * Plays every channel once in turn while the microphone is held to a speaker, or stands at the
   * seat, and keeps what was heard. With more speakers than outputs it plays those of one `round`
   * of plugs, from 0. Call from inside a click or key.
   */
  walkStop(at: WalkPosition, round?: number): Promise<void>;
  /** How the sound level meter weights from now on; A and slow at first. */
  setMeter(weighting: Weighting, time: 'fast' | 'slow'): void;
  /**
   * Takes a microphone calibration file and reads the real takes again with it; a file that makes
   * no sense raises the trouble.
   */
  importCalibration(file: File): Promise<void>;
  /** A new microphone position, or back to an earlier one by its id. */
  setPosition(position: Omit<Position, 'id'> | string): void;
  /** Looks into the sound of the session's takes; to be closed when nobody looks any more. */
  inspect(): Inspector;
  /** Looks at the devices again; asks for the microphone once when names are hidden. */
  lookAtDevices(ask: boolean): Promise<void>;
  /** Silences everything at once and ends whatever runs. Always safe to call. */
  stop(): void;
  /** The take as files for the recording rig; `purpose` probe where it is left out. */
  saveStimulus(
    purpose?: TakePurpose,
  ): Promise<{ readonly name: string; readonly blob: Blob }[] | null>;
  /** Reads a recording brought back for the take last saved. */
  importCapture(file: File, purpose?: TakePurpose): Promise<void>;
  dismissTrouble(): void;
}
