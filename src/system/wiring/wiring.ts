import type { ChannelLabel } from '../channel';

/** Kinds of rule a conflict can rest on, in words a person reads. */
export type RuleName =
  | 'what outputs carry'
  | 'one role per output'
  | 'role only without others'
  | 'outputs in pairs'
  | 'exclusive choices'
  | 'order of channels'
  | 'order of outputs'
  | 'names of height pairs';

/** One output in use. */
export interface WiredOutput {
  /** The output's id in the sheet. */
  readonly output: string;
  readonly name: string;
  /** The loudspeaker as declared. */
  readonly channel: ChannelLabel;
  /** What the processor calls it: a declared front height may play as middle height. */
  readonly role: ChannelLabel;
}

/** Channels that cannot be wired together, and no fewer rules and channels would do as a reason. */
export interface WiringConflict {
  readonly rules: readonly RuleName[];
  /** Ids of the outputs in conflict. */
  readonly outputs: readonly string[];
  readonly channels: readonly ChannelLabel[];
  readonly sentence: string;
}

/** A layout that can be wired, and what to change to have it. */
export interface NearLayout {
  readonly name: string;
  readonly changes: readonly string[];
}

export interface Wired {
  readonly wired: true;
  /** In the order of the sheet's outputs; outputs that are not listed stay free. */
  readonly outputs: readonly WiredOutput[];
}

export interface NotWired {
  readonly wired: false;
  readonly conflicts: readonly WiringConflict[];
  /** Fewest changes first. */
  readonly nearest: readonly NearLayout[];
}

export type Wiring = Wired | NotWired;
