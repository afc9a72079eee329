import type { ProcessorSteps } from '../../proposal/proposal';
import type { ProcessorSheet } from './processor-sheet';

/** Metres in a unit of distance; the international foot is 0.3048 m exactly. */
export const metresIn = { m: 1, ft: 0.3048 } as const;

/** The steps and ranges of a sheet as proposals use them, distances in metres. */
export function stepsOf({ crossover, distance, level }: ProcessorSheet): ProcessorSteps {
  const metres = metresIn[distance.unit];
  return {
    crossoverHz: crossover.stepsHz,
    distanceStepMetres: distance.step * metres,
    distanceRangeMetres: [distance.low * metres, distance.high * metres],
    levelStepDb: level.stepDb,
    levelRangeDb: [level.lowDb, level.highDb],
  };
}
