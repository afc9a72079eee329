import type { ChannelLabel, GroupId } from './channel';

/** What the processor already has in force while it is measured. */
export interface DeclaredSettings {
  /** Typed distances, metres; a channel that is not there has none in force. */
  readonly distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Typed trims, dB. */
  readonly trimDb: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Crossover in force, Hz; null is full range; a group that is not there is not known. */
  readonly crossoverHz: Readonly<Partial<Record<GroupId, number | null>>>;
  readonly equaliser: 'on' | 'off' | 'not known';
}

/** A processor at factory settings of which nothing was said. */
export const nothingInForce: DeclaredSettings = {
  distanceMetres: {},
  trimDb: {},
  crossoverHz: {},
  equaliser: 'not known',
};
