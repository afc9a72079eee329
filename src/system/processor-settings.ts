import type { ChannelLabel, GroupId } from './channel';
import { usualFilters, type FiltersInForce } from './declared-settings';

/** All that a tuner types into a processor, and which speakers are turned over for it. */
export interface ProcessorSettings {
  /** Delays are counted against the farthest; a channel that is not there has no delay of its own. */
  readonly distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>>;
  readonly trimDb: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Speakers turned over since they were measured: subs by a setting, others by their two wires. */
  readonly inverted: readonly ChannelLabel[];
  /** Of each group but the subs; null is full range. */
  readonly crossoverHz: Readonly<Partial<Record<GroupId, number | null>>>;
  /** Null for off. */
  readonly subLowPassHz: number | null;
  readonly lowCutHz: number | null;
  /** Low-pass of the LFE channel, and how much louder than a main channel it is replayed. */
  readonly lfe: { readonly lowPassHz: number; readonly gainDb: number };
  readonly filters: FiltersInForce;
  /** Whether sections of an equaliser are typed as well, so that responses are shaped on purpose. */
  readonly equalised: boolean;
}

/** A processor at factory settings; LFE by ITU-R BS.775 and common practice, from memory. */
export const factorySettings: ProcessorSettings = {
  distanceMetres: {},
  trimDb: {},
  inverted: [],
  crossoverHz: {},
  subLowPassHz: null,
  lowCutHz: null,
  lfe: { lowPassHz: 120, gainDb: 10 },
  filters: usualFilters,
  equalised: false,
};
