import type { ChannelLabel, GroupId } from '../system/channel';
import type { PredictedLoss } from './proposal';
import type { Reason } from './reason';

/** One sub as it is set; its distance and trim to type stand with the channels. */
export interface SubProposal {
  readonly channel: ChannelLabel;
  /** The wished distance before it is rounded, m; null where it cannot be told. */
  readonly wishedMetres: number | null;
  /** Against the first sub, dB. */
  readonly gainDb: number;
  /** To be set at the processor or at the sub; it says nothing of how the sub is wired. */
  readonly polarity: 'normal' | 'inverted';
}

/** Another delay that does nearly as well, in whole steps of the processor's distances. */
export interface OtherDelay {
  /** Later than the proposed one when above 0. */
  readonly laterSeconds: number;
  /** Whether all subs are turned over against the proposed polarity. */
  readonly turned: boolean;
  /** With all distances as they would be typed. */
  readonly lossDb: number;
  /** False where the processor's range of distances does not hold it. */
  readonly fits: boolean;
  /** Whether it lies farther from where the direct sounds line up, enough to count against it. */
  readonly farther: boolean;
}

/** How the subs are set against the mains. */
export interface SubAlignmentProposal {
  /** The speakers they were aligned with. */
  readonly group: GroupId;
  readonly channels: readonly ChannelLabel[];
  readonly crossoverHz: number;
  /** As typed; and as it would be by arrival alone. */
  readonly sum: PredictedLoss;
  readonly byArrival: PredictedLoss;
  /** With what the tuner chose of delay and polarity taken back. */
  readonly asProposedLossDb: number;
  readonly alternatives: readonly OtherDelay[];
  /** Delays that cost at most 0.1 dB more, seconds beside the wished one. */
  readonly toleranceSeconds: readonly [number, number];
  /** 90 % interval from how the seats differ, beside the wished one; null for fewer than three. */
  readonly interval: readonly [number, number] | null;
  /** What would make it surer; null when nothing is in doubt. */
  readonly doubt: string | null;
  /** What the other groups lose with the same setting. */
  readonly groups: readonly { readonly group: GroupId; readonly sum: PredictedLoss }[];
}

/** How evenly several subs reach the seats, rms deviation from seat to seat, dB. */
export interface SubSpread {
  readonly deviationDb: number;
  readonly asWiredDb: number;
  readonly firstAloneDb: number;
}

/** A filter of the subs to type. */
export interface SubFilterProposal {
  /** Null for off. */
  readonly hz: number | null;
  /** What it takes away: a low-pass at the highest crossover, a low cut at the sub's f3, dB. */
  readonly costDb: number;
  readonly reasons: readonly Reason[];
}

/** Everything the subs need. */
export interface SubsProposal {
  readonly subs: readonly SubProposal[];
  /** Null where it cannot be told; missing says why, and distances go by arrival. */
  readonly alignment: SubAlignmentProposal | null;
  /** Null for one sub or one seat. */
  readonly spread: SubSpread | null;
  /** What the tuner wants beside level bass, dB. */
  readonly bassPreferenceDb: number;
  /** Where the subs together are 6 dB down at their upper end; null where they are not. */
  readonly upperHz: number | null;
  readonly lowPass: SubFilterProposal;
  readonly lowCut: SubFilterProposal;
  /** How to turn what the processor cannot set: phase and polarity at the sub itself. */
  readonly phase: readonly Reason[];
  readonly reasons: readonly Reason[];
}
