import type { ChannelLabel, GroupId } from '../system/channel';

/** What the processor can take. The full processor sheet grows from this. */
export interface ProcessorSteps {
  readonly crossoverHz: readonly number[];
  readonly distanceStepMetres: number;
  readonly distanceRangeMetres: readonly [number, number];
  readonly levelStepDb: number;
  readonly levelRangeDb: readonly [number, number];
}

export interface CrossoverAlternative {
  readonly stepHz: number;
  /** stepHz minus the deciding speaker's median f3. */
  readonly marginHz: number;
  /** Whether the rule of practice, or the measured rule, lands on this step. */
  readonly practice: boolean;
  readonly measured: boolean;
}

/** Speakers of one model, and how much was heard of them. */
export interface ReadFrom {
  readonly channels: readonly ChannelLabel[];
  /** Such as "3 seats and 2 speakers". */
  readonly heard: string;
}

export interface GroupProposal {
  readonly group: GroupId;
  readonly channels: readonly ChannelLabel[];
  /** Null when no step will do or nothing could be read; the reason says which. */
  readonly crossoverHz: number | null;
  readonly practiceHz: number | null;
  readonly measuredHz: number | null;
  readonly decidedBy: ChannelLabel | null;
  /** What the deciding roll-off was read together from; left out: from this position alone. */
  readonly readFrom?: ReadFrom | undefined;
  readonly reason: string;
  readonly warnings: readonly string[];
  readonly alternatives: readonly CrossoverAlternative[];
}

export interface ChannelProposal {
  readonly channel: ChannelLabel;
  readonly distanceMetres: number | null;
  readonly distanceReason: string;
  readonly levelTrimDb: number | null;
  readonly levelReason: string;
  readonly polarity: 'normal' | 'inverted' | 'cannot tell';
  readonly warnings: readonly string[];
}

/** Numbers to type, each with its reason; what `leadline propose` prints. */
export interface Proposal {
  readonly format: 'leadline-proposal';
  readonly version: 1;
  readonly layout: string;
  readonly simulated: boolean;
  readonly groups: readonly GroupProposal[];
  readonly channels: readonly ChannelProposal[];
}
