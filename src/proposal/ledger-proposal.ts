import type { LedgerSetting } from '../../dsp/bass/ledger-opener';
import type { ChannelLabel, GroupId } from '../system/channel';
import type { Reason } from './reason';

/** A change of one setting that brings bass back. */
export interface LedgerMend {
  readonly change:
    | { readonly setting: 'crossover'; readonly group: GroupId; readonly hz: number | null }
    | { readonly setting: 'sub low-pass'; readonly hz: number }
    | { readonly setting: 'low cut'; readonly hz: number | null };
  /** What the channel gains, dB, above 0. */
  readonly gainDb: number;
  readonly sentence: string;
}

/** A stretch of frequencies that reach nobody: below −6 dB. */
export interface LedgerGapProposal {
  readonly lowHz: number;
  readonly highHz: number;
  /** The setting that opens it; null where no setting would close it. */
  readonly opens: LedgerSetting | null;
}

/** Where the bass of one programme channel goes. */
export interface LedgerLineProposal {
  readonly channel: ChannelLabel | 'LFE';
  /** Who carries its bass below the crossover; null when nobody does. */
  readonly carrier: 'own' | 'subs' | 'fronts' | null;
  /** Pink energy from 20 to 300 Hz that reaches nobody, dB, 0 or more. */
  readonly lossDb: number;
  /** What no setting would bring back. */
  readonly leastLossDb: number;
  readonly gaps: readonly LedgerGapProposal[];
  /** Which part of a loss over 0.5 dB is lost and why; null for less. */
  readonly why: Reason | null;
  /** The most that one change of each setting can bring, best first. */
  readonly mends: readonly LedgerMend[];
}

/** The bass ledger of one set of settings; channels without a known roll-off are left out. */
export interface LedgerProposal {
  readonly lines: readonly LedgerLineProposal[];
  readonly unknown: readonly ChannelLabel[];
}
