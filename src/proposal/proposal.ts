import type { ChannelLabel, GroupId } from '../system/channel';
import type { BassSettings } from './bass-settings';
import type { EqualiserAdvice } from './equaliser';
import type { LedgerProposal } from './ledger-proposal';
import type { Reason } from './reason';
import type { SubsProposal } from './subs-proposal';

/** What the processor can take, as far as a tuner can say it without a sheet. */
export interface ProcessorSteps {
  readonly crossoverHz: readonly number[];
  readonly distanceStepMetres: number;
  readonly distanceRangeMetres: readonly [number, number];
  readonly levelStepDb: number;
  readonly levelRangeDb: readonly [number, number];
  /** What distances are typed in; left out: metres. */
  readonly distanceUnit?: 'm' | 'ft' | undefined;
}

/** What a step is too low for, or, for the reach of the subs, too high. */
export type BrokenLimit = 'roll-off' | 'distortion' | 'compression' | 'sub reach';

/** What a group and the subs lose together about the crossover, at all seats. */
export interface PredictedLoss {
  /** Pink energy lost against both in phase, mean over seats and speakers, dB, 0 or more. */
  readonly lossDb: number;
  /** Deepest 1/6 octave below both in phase, all seats together; 0 or below. */
  readonly dipDb: number;
  readonly dipHz: number;
  /** The speaker that loses most. */
  readonly worst: { readonly channel: ChannelLabel; readonly lossDb: number };
}

/** One step the processor lets a group have, with all that speaks for and against it. */
export interface CrossoverAlternative {
  readonly stepHz: number;
  /** stepHz minus the highest median f3 of the group; null where no roll-off is known. */
  readonly marginHz: number | null;
  /** Whether the rule of practice, or the measured rule, lands on this step. */
  readonly practice: boolean;
  readonly measured: boolean;
  /** Empty when the step is neither too low nor too high. */
  readonly breaks: readonly BrokenLimit[];
  /** Above 120 Hz in the bed a sub begins to be heard where it stands. */
  readonly localised: boolean;
  /**
   * With the subs aligned anew for this step in the group that sets them, as that group has them in
   * the others; null where that cannot be told.
   */
  readonly sum: PredictedLoss | null;
}

/** Whether a group can do without a crossover, and what that changes. */
export interface FullRangeAdvice {
  /**
   * 'forced': without subs nobody else takes its bass. 'possible': the processor and the speakers
   * allow it. 'too small': the processor allows it and the speakers do not reach low enough.
   * 'cannot tell': no roll-off is known. 'locked': only once another group runs full range.
   * 'not offered': the processor has no such setting.
   */
  readonly kind: 'forced' | 'possible' | 'too small' | 'cannot tell' | 'locked' | 'not offered';
  readonly reasons: readonly Reason[];
}

/** The tuner's own setting instead of the proposed one. */
export interface OwnCrossover {
  /** Null for full range. */
  readonly crossoverHz: number | null;
  readonly breaks: readonly BrokenLimit[];
  readonly sum: PredictedLoss | null;
  /** What it costs beside the proposed one, as sentences; empty when it is the same. */
  readonly price: readonly Reason[];
}

export interface GroupProposal {
  readonly group: GroupId;
  readonly channels: readonly ChannelLabel[];
  /** Null when it runs full range, no step will do or nothing can be known; the reason says which. */
  readonly crossoverHz: number | null;
  /** Where no step will do, the one that breaks least and is typed for want of a better. */
  readonly nearestHz: number | null;
  readonly practiceHz: number | null;
  readonly measuredHz: number | null;
  /** The speaker that asks for the highest crossover, and by which reading. */
  readonly decidedBy: ChannelLabel | null;
  readonly decidedByReading: 'roll-off' | 'distortion' | 'compression' | null;
  /** What the deciding roll-off was read from together; left out: from its own reading alone. */
  readonly readFrom?: { readonly channels: readonly ChannelLabel[]; readonly heard: string };
  /** All reasons in one. */
  readonly reason: string;
  readonly reasons: readonly Reason[];
  readonly warnings: readonly string[];
  /** Rising steps; empty where nothing is known of the group. */
  readonly alternatives: readonly CrossoverAlternative[];
  readonly fullRange: FullRangeAdvice;
  /** Null while the tuner keeps to the proposal. */
  readonly own: OwnCrossover | null;
}

/** A number as it is typed. */
export interface TypedValue {
  readonly value: number;
  readonly unit: 'm' | 'ft' | 'dB';
  readonly step: number;
  /** What rounding leaves: milliseconds of time for a distance, 0 for a level. */
  readonly costMs: number;
  /** Decibels: of level, or of the sum at the crossover for a distance. */
  readonly costDb: number;
}

export interface ChannelProposal {
  readonly channel: ChannelLabel;
  /** Null where it cannot be told or typed; the reason says why. */
  readonly distance: TypedValue | null;
  readonly distanceMetres: number | null;
  readonly distanceReason: string;
  readonly distanceReasons: readonly Reason[];
  readonly level: TypedValue | null;
  readonly levelTrimDb: number | null;
  readonly levelReason: string;
  readonly levelReasons: readonly Reason[];
  /** As it is wired; that of a sub is never told, its setting stands with the subs. */
  readonly polarity: 'normal' | 'inverted' | 'cannot tell';
  readonly warnings: readonly string[];
}

/** The LFE channel of a programme, which has no speaker of its own. */
export interface LfeProposal {
  /** Low-pass of its content, Hz. */
  readonly lowPassHz: number;
  /** In-band gain of replay over a main channel, dB. */
  readonly replayGainDb: number;
  readonly reasons: readonly Reason[];
}

/** Something that could not be proposed, and the one action that would settle it. */
export interface MissingSetting {
  readonly channel: ChannelLabel | null;
  readonly what:
    'distance' | 'level' | 'crossover' | 'sub alignment' | 'bass ledger' | 'temperature';
  readonly sentence: string;
  readonly action: string;
}

/** Numbers to type, each with its reason; what `leadline propose` prints. */
export interface Proposal {
  readonly format: 'leadline-proposal';
  readonly version: 2;
  readonly layout: string;
  readonly simulated: boolean;
  /** Names of the seats it rests on, that of the readings first. */
  readonly seats: readonly string[];
  /**
   * 'coming': alternatives have no sums yet and subs are set by arrival; another one follows.
   * 'outdated': whole, but of choices before the present ones; another one follows.
   */
  readonly sums: 'coming' | 'outdated' | 'there';
  /** All that is to be typed: the tuner's own settings where there are some, else the proposed. */
  readonly settings: BassSettings;
  readonly groups: readonly GroupProposal[];
  readonly channels: readonly ChannelProposal[];
  /** Null in a layout without subs. */
  readonly subs: SubsProposal | null;
  readonly lfe: LfeProposal;
  readonly ledger: {
    readonly proposed: LedgerProposal;
    /** With the tuner's own settings; null while they are the proposed ones. */
    readonly own: LedgerProposal | null;
  };
  /** Null while it is off. */
  readonly equaliser: EqualiserAdvice | null;
  readonly missing: readonly MissingSetting[];
}
