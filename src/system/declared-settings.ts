import type { ChannelLabel, GroupId } from './channel';
import type { ProcessorSheet } from './sheet/processor-sheet';

/** What the processor already has in force while it is measured. */
export interface DeclaredSettings {
  /** Typed distances, metres; a channel that is not there has none in force. */
  readonly distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Typed trims, dB. */
  readonly trimDb: Readonly<Partial<Record<ChannelLabel, number>>>;
  /**
   * Crossover in force, Hz, of the subs their low-pass; null is full range, of the subs none; a
   * group that is not there is not known.
   */
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

/** Families and orders of the filters a crossover means. */
export type FiltersInForce = ProcessorSheet['filters'];

/** What was in force when a take was played, with all that is needed to take it out again. */
export interface SettingsInForce extends DeclaredSettings {
  readonly filters: FiltersInForce;
}

/** Where no sheet says otherwise; common practice. */
export const usualFilters: FiltersInForce = {
  highPass: { family: 'Butterworth', order: 2 },
  subLowPass: { family: 'Linkwitz-Riley', order: 4 },
};

/** The settings a take is played with: what is declared now, with the filters of the sheet. */
export function settingsInForce(declared: {
  readonly inForce: DeclaredSettings;
  readonly sheet: ProcessorSheet | null;
}): SettingsInForce {
  return { ...declared.inForce, filters: declared.sheet?.filters ?? usualFilters };
}

/** Whether nothing at all is declared. */
export function isNothingInForce(declared: DeclaredSettings): boolean {
  const { distanceMetres, trimDb, crossoverHz, equaliser } = declared;
  const typed = [distanceMetres, trimDb, crossoverHz].flatMap((record) => Object.keys(record));
  return typed.length === 0 && equaliser === 'not known';
}
