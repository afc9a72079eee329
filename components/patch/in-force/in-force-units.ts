import { distanceUnitOf } from '../../../src/session/distance-unit';
import type { SessionDocument } from '../../../src/session/document';
import { metresIn, stepsOf } from '../../../src/system/sheet/steps-of-sheet';

/** The unit a processor takes distances in, and the ranges of what can be typed into it. */
export interface TypedRanges {
  readonly unit: 'm' | 'ft';
  readonly metresPerUnit: number;
  /** In that unit. */
  readonly distance: readonly [low: number, high: number];
  readonly trimDb: readonly [low: number, high: number];
}

/** From the sheet; from the steps in use while there is none. */
export function typedRanges(document: SessionDocument): TypedRanges {
  const { sheet, processor } = document;
  const unit = distanceUnitOf(document);
  const metresPerUnit = metresIn[unit];
  const { distanceRangeMetres, levelRangeDb } = sheet ? stepsOf(sheet) : processor;
  const inUnit = (metres: number): number => Math.round((metres / metresPerUnit) * 1e6) / 1e6;
  return {
    unit,
    metresPerUnit,
    distance: [inUnit(distanceRangeMetres[0]), inUnit(distanceRangeMetres[1])],
    trimDb: levelRangeDb,
  };
}
