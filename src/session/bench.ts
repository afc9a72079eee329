import type { Proposal } from '../proposal/proposal';
import type { ChannelReading, Readings } from '../reading/reading';
import type { MicLevel, PlayProgress, RigAbilities, RigKind } from '../rig/port';
import type { Layout } from '../system/channel';
import type { Trouble } from '../trouble';
import type { SessionDocument } from './document';

/** What the bench is doing right now. */
export type Activity =
  | { readonly kind: 'idle' }
  | { readonly kind: 'playing'; readonly play: PlayProgress; readonly channel: string | null }
  | {
      readonly kind: 'reading';
      readonly progress: number;
      readonly secondsLeft: number | null;
      /** Readings that have already arrived, in take order. */
      readonly channels: readonly ChannelReading[];
    };

/** What the screens show; a new object after every change. */
export interface BenchState {
  readonly document: SessionDocument;
  readonly layout: Layout;
  /** Readings of the newest take that has any, else null. */
  readonly readings: Readings | null;
  /** Null until there are readings. */
  readonly proposal: Proposal | null;
  readonly activity: Activity;
  /** The last thing that went wrong, until dismissed. */
  readonly trouble: Trouble | null;
  readonly mic: MicLevel | null;
  readonly abilities: RigAbilities | null;
  readonly saved: 'saved' | 'saving' | 'failed' | 'elsewhere';
}

/** The bench as the screens use it. Nothing here throws for what the world does. */
export interface Bench {
  readonly state: BenchState;
  /** Calls back after every change; returns the way to unsubscribe. */
  subscribe(listener: () => void): () => void;
  /** A named change of the document; saved as it happens. */
  change(name: string, change: (document: SessionDocument) => SessionDocument): void;
  /** Takes a layout name; a name that means nothing leaves the layout and raises the trouble. */
  setLayout(name: string): void;
  setRig(kind: RigKind): void;
  /** Plays a take on the chosen rig, reads it, proposes. Call from inside a click. */
  startTake(): Promise<void>;
  /** Silences everything at once and ends whatever runs. Always safe to call. */
  stop(): void;
  /** The take as files for the recording rig. */
  saveStimulus(): Promise<{ readonly name: string; readonly blob: Blob }[] | null>;
  /** Reads a recording brought back for the take last saved. */
  importCapture(file: File): Promise<void>;
  dismissTrouble(): void;
}
