import type { ProcessorSteps } from './proposal';

/** Steps to start from until the processor's own are known (common practice, no source). */
export const defaultProcessorSteps: ProcessorSteps = {
  crossoverHz: [40, 50, 60, 70, 80, 90, 100, 110, 120, 150, 200],
  distanceStepMetres: 0.01,
  distanceRangeMetres: [0, 20],
  levelStepDb: 0.5,
  levelRangeDb: [-12, 12],
};
