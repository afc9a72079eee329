import type { ChannelLabel, GroupId } from '../system/channel';

/** Every setting that the sums and the ledger of the bass depend on. */
export interface BassSettings {
  /** Of each group; null for full range. */
  readonly crossoverHz: Readonly<Partial<Record<GroupId, number | null>>>;
  /** As typed but for a common error; a channel that is not there is left out of sums. */
  readonly distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>>;
  readonly trimDb: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** What is turned over: subs by a setting, mains whose wires are to be swapped. */
  readonly inverted: readonly ChannelLabel[];
  /** Null for off, or for a processor without one. */
  readonly subLowPassHz: number | null;
  readonly lowCutHz: number | null;
  /** Speed of sound the distances are counted with. */
  readonly metresPerSecond: number;
}
