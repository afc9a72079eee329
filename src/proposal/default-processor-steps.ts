import { isImperial, metresPerFoot } from '../locale/length-text';
import type { ProcessorSteps } from './proposal';

/** Steps to start from until the processor's own are known (common practice, no source). */
export const defaultProcessorSteps: ProcessorSteps = {
  crossoverHz: [40, 50, 60, 70, 80, 90, 100, 110, 120, 150, 200],
  distanceStepMetres: 0.01,
  distanceRangeMetres: [0, 20],
  levelStepDb: 0.5,
  levelRangeDb: [-12, 12],
};

/** The same for a processor that takes feet, in tenths (common practice, no source). */
export const stepsInFeet: ProcessorSteps = {
  ...defaultProcessorSteps,
  distanceUnit: 'ft',
  distanceStepMetres: 0.1 * metresPerFoot,
  distanceRangeMetres: [0, 65 * metresPerFoot],
};

/** Those a session begins with: in the units in force. */
export function firstSteps(): ProcessorSteps {
  return isImperial() ? stepsInFeet : defaultProcessorSteps;
}
