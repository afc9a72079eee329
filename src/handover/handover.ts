import type { Claim, Verdict } from '../proof/proof';
import type { ChannelLabel } from '../system/channel';

/** 1/24-octave response, dB re 500 to 2000 Hz, that of a sub re 40 to 80 Hz. */
export interface HandoverCurve {
  readonly hz: readonly number[];
  readonly db: readonly number[];
}

/** What goes on one output of the processor; without a processor sheet a speaker of the take. */
export interface HandoverOutput {
  readonly output: string;
  /** Null where the output stays open. */
  readonly channel: ChannelLabel | null;
  readonly speaker: string | null;
  /** As typed, with its unit; null where it cannot be told or nothing is on the output. */
  readonly distance: string | null;
  readonly level: string | null;
  readonly crossover: string | null;
  /** Through the processor where it was proved, else as measured; null where none was read. */
  readonly response: HandoverCurve | null;
}

export interface HandoverLine {
  readonly claim: Claim;
  readonly channels: readonly ChannelLabel[];
  readonly verdict: Verdict;
  readonly sentence: string;
  /** What would settle it when it cannot be told; else null. */
  readonly action: string | null;
}

/** A named fact of the conditions, or a setting of the subs. */
export interface HandoverFact {
  readonly name: string;
  readonly value: string;
}

/** The record that stays with a system: all that was set and proved, and how. Plain data. */
export interface Handover {
  readonly format: 'leadline-handover';
  readonly version: 1;
  readonly session: string;
  readonly layout: string;
  /** ISO 8601. */
  readonly madeAt: string;
  /** Whether anything on it was computed instead of measured. */
  readonly simulated: boolean;
  /** Name of the processor; null without a sheet. */
  readonly processor: string | null;
  readonly outputs: readonly HandoverOutput[];
  /** What is set for the subs as a whole, and each one's polarity. */
  readonly subs: readonly HandoverFact[];
  /** Null while nothing is proved. */
  readonly proof: {
    readonly counts: Readonly<Record<Verdict, number>>;
    readonly lines: readonly HandoverLine[];
  } | null;
  readonly conditions: readonly HandoverFact[];
  /** What is to be distrusted, sentences. */
  readonly cautions: readonly string[];
  readonly notes: string;
}
