import type { ChannelLabel } from '../system/channel';

/** What of a system is held against an earlier visit. */
export type VisitMatter =
  | 'speakers'
  | 'plan'
  | 'processor'
  | 'settings'
  | 'conditions'
  | 'take'
  | 'microphone'
  | 'distance'
  | 'level'
  | 'roll-off'
  | 'response'
  | 'polarity'
  | 'noise';

export type VisitVerdict = 'as it was' | 'changed' | 'cannot tell';

/** How much something changed, now less then. */
export interface VisitFigure {
  readonly value: number;
  /** 90 % interval. */
  readonly interval: readonly [number, number];
  /** Within these it counts as it was. */
  readonly allowed: readonly [number, number];
  readonly unit: 'm' | 'dB' | 'octaves' | '°C';
}

/** One thing that was held against the earlier visit. */
export interface VisitFinding {
  /** The same for the same thing from comparison to comparison. */
  readonly id: string;
  readonly matter: VisitMatter;
  /** The microphone's position; null for what concerns the whole system. */
  readonly position: string | null;
  readonly channels: readonly ChannelLabel[];
  readonly verdict: VisitVerdict;
  /** What was found. */
  readonly sentence: string;
  /** Null where it was not judged by a number. */
  readonly figure: VisitFigure | null;
  /** The one thing that would settle it when it cannot be told; else null. */
  readonly action: string | null;
}

/** One of the two visits, as a heading names it. */
export interface VisitName {
  readonly session: string;
  readonly layout: string;
  /** When the newest take that was compared was made, ISO 8601; null without takes. */
  readonly takenAt: string | null;
}

/** A session held against an earlier one; what `leadline visits` prints. */
export interface VisitComparison {
  readonly format: 'leadline-visits';
  readonly version: 1;
  readonly now: VisitName;
  readonly before: VisitName;
  readonly simulated: boolean;
  readonly findings: readonly VisitFinding[];
  /** Sentences on the whole, such as a session that is the newer one. */
  readonly notes: readonly string[];
  readonly counts: Readonly<Record<VisitVerdict, number>>;
}
