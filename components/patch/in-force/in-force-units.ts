import type { SessionDocument } from '../../../src/session/document';

/** The unit a processor takes distances in, and the ranges of what can be typed into it. */
export interface TypedRanges {
  readonly unit: 'm' | 'ft';
  readonly metresPerUnit: number;
  /** In that unit. */
  readonly distance: readonly [low: number, high: number];
  readonly trimDb: readonly [low: number, high: number];
}

/** From the sheet; from the steps in use, in metres, while there is none. */
export function typedRanges({ sheet, processor }: SessionDocument): TypedRanges {
  if (!sheet) {
    return {
      unit: 'm',
      metresPerUnit: 1,
      distance: processor.distanceRangeMetres,
      trimDb: processor.levelRangeDb,
    };
  }
  const { unit, low, high } = sheet.distance;
  return {
    unit,
    // The international foot is 0.3048 m exactly.
    metresPerUnit: unit === 'ft' ? 0.3048 : 1,
    distance: [low, high],
    trimDb: [sheet.level.lowDb, sheet.level.highDb],
  };
}
