import type { ChannelLabel, GroupId } from '../system/channel';

/** What is claimed of a system whose settings are typed. */
export type Claim =
  | 'answers'
  | 'polarity'
  | 'arrival'
  | 'level'
  | 'crossover'
  | 'redirected bass'
  | 'LFE'
  | 'response'
  | 'nothing else';

export type Verdict = 'pass' | 'fail' | 'cannot tell';

/** Mistakes that are known by what they do. */
export type Slip =
  | 'wrong side'
  | 'feet for metres'
  | 'wrong sign'
  | 'left on full range'
  | 'another crossover'
  | 'own low-pass on'
  | 'equaliser or dynamics on'
  | 'inverted'
  | 'LFE level'
  | 'upmixing on'
  | 'wrong wiring';

/** A setting that is to be changed, and where to find it. */
export interface SettingChange {
  readonly setting:
    | 'distance'
    | 'trim'
    | 'polarity'
    | 'crossover'
    | 'own low-pass of the sub'
    | 'LFE level'
    | 'equaliser and dynamics'
    | 'upmixing'
    | 'wiring';
  readonly channels: readonly ChannelLabel[];
  readonly group: GroupId | null;
  /** As it seems to be now; null where only its being wrong is known. */
  readonly from: number | string | null;
  /** As it was to be typed. */
  readonly to: number | string;
  readonly unit: 'm' | 'dB' | 'Hz' | null;
}

/** The number a claim was judged by. */
export interface ProofFigure {
  readonly value: number;
  /** 90 % interval. */
  readonly interval: readonly [number, number];
  /** Within these the claim holds. */
  readonly allowed: readonly [number, number];
  readonly unit: 'ms' | 'dB';
}

/** One claim, judged. */
export interface ProofLine {
  /** The same for the same claim from proof to proof. */
  readonly id: string;
  readonly claim: Claim;
  /** Channels to play again when it is proved alone. */
  readonly channels: readonly ChannelLabel[];
  readonly verdict: Verdict;
  /** What was found. */
  readonly sentence: string;
  /** Null where it was not judged by a number, or there is none. */
  readonly figure: ProofFigure | null;
  /** What to change when it failed; else empty. */
  readonly changes: readonly SettingChange[];
  /** The mistake that explains a failure; null for others. */
  readonly slip: Slip | null;
  /** What would settle it when it cannot be told; else null. */
  readonly action: string | null;
}

/** The claims of one system, judged; what `leadline prove` prints. */
export interface Proof {
  readonly format: 'leadline-proof';
  readonly version: 1;
  readonly layout: string;
  readonly simulated: boolean;
  readonly lines: readonly ProofLine[];
  /** Sentences on the whole, such as a microphone that stands elsewhere. */
  readonly notes: readonly string[];
  readonly counts: Readonly<Record<Verdict, number>>;
}
