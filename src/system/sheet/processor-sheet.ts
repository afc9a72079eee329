import type { ChannelLabel, GroupId } from '../channel';

/** One role an output can carry. */
export interface OutputRole {
  readonly channel: ChannelLabel;
  /** The output carries the role only in a layout that has none of these. */
  readonly onlyWithout?: readonly ChannelLabel[] | undefined;
}

/** One output; its roles stand in order of preference, and it carries one of them at a time. */
export interface ProcessorOutput {
  readonly id: string;
  /** Plain text, such as "Back left". */
  readonly name: string;
  readonly roles: readonly OutputRole[];
}

/** In use as soon as one of the outputs carries one of the channels; no outputs: any output. */
export interface ExclusiveChoice {
  readonly channels: readonly ChannelLabel[];
  readonly outputs?: readonly string[] | undefined;
}

/** At most one of the choices is in use. */
export interface ExclusiveSet {
  readonly name: string;
  readonly choices: readonly ExclusiveChoice[];
}

/** Chains of stages: what a stage names is used only when all of every earlier stage is. */
export interface FillingOrder {
  readonly channels: readonly (readonly (readonly ChannelLabel[])[])[];
  readonly outputs: readonly (readonly (readonly string[])[])[];
}

export type HeightPair = 'front' | 'middle' | 'back';

/** What 1, 2 or 3 declared height pairs are called, front to back; absent: so many do not fit. */
export type HeightNaming = Readonly<
  Partial<Record<'1' | '2' | '3', readonly HeightPair[] | undefined>>
>;

/** Range of crossovers for some groups, within the steps. */
export interface CrossoverLimit {
  readonly groups: readonly GroupId[];
  readonly lowHz: number;
  readonly highHz: number;
}

/** A group that can run without a high-pass, and the groups that can only once it does. */
export interface FullRangeOption {
  readonly group: GroupId;
  readonly unlocks: readonly GroupId[];
}

/** Family and order of a filter: 2 is 12 dB per octave. */
export interface FilterKind {
  readonly family: 'Butterworth' | 'Linkwitz-Riley';
  readonly order: number;
}

/** Everything the bench knows of a processor; how the file reads is told beside the samples. */
export interface ProcessorSheet {
  readonly format: 'leadline-processor';
  readonly version: 1;
  readonly name: string;
  /** True for samples that describe no existing processor. */
  readonly invented: boolean;
  readonly outputs: readonly ProcessorOutput[];
  /** Two outputs that carry the two partners of one pair together. */
  readonly pairs: readonly (readonly [string, string])[];
  readonly exclusive: readonly ExclusiveSet[];
  readonly filling: FillingOrder;
  readonly heightNaming: HeightNaming;
  readonly crossover: {
    readonly stepsHz: readonly number[];
    readonly setting: 'one for all' | 'per group';
    readonly limits: readonly CrossoverLimit[];
  };
  readonly fullRange: readonly FullRangeOption[];
  readonly subLowPass: {
    readonly stepsHz: readonly number[];
    /** Whether the low-pass may not lie below the highest crossover of the bed. */
    readonly notBelowHighestBedCrossover: boolean;
  };
  /** Empty when the processor has none. */
  readonly lowCut: { readonly stepsHz: readonly number[] };
  /** In the unit named. */
  readonly distance: {
    readonly unit: 'm' | 'ft';
    readonly step: number;
    readonly low: number;
    readonly high: number;
  };
  readonly level: { readonly stepDb: number; readonly lowDb: number; readonly highDb: number };
  readonly filters: { readonly highPass: FilterKind; readonly subLowPass: FilterKind };
}
