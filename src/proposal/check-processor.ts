import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import { checkSteps } from './parse-steps';
import type { ProcessorSteps } from './proposal';

/** What is wrong with a processor's steps and ranges, or null when nothing is. */
export function checkProcessor(processor: ProcessorSteps): Trouble | null {
  return (
    checkSteps(processor.crossoverHz) ??
    checkScale('distance', 'm', processor.distanceStepMetres, processor.distanceRangeMetres) ??
    checkScale('level', 'dB', processor.levelStepDb, processor.levelRangeDb)
  );
}

function checkScale(
  name: string,
  unit: string,
  step: number,
  [low, high]: readonly [number, number],
): Trouble | null {
  if (!(step > 0 && step < Infinity)) {
    return trouble('bad-steps', msg(str`The ${name} step must be above 0 ${unit}, not ${step}.`));
  }
  if (!(low < high && Number.isFinite(low) && Number.isFinite(high))) {
    return trouble(
      'bad-steps',
      msg(str`The ${name} range must run from low to high in ${unit}, not from ${low} to ${high}.`),
    );
  }
  if (Math.floor(high / step + 1e-9) < Math.ceil(low / step - 1e-9)) {
    return trouble(
      'bad-steps',
      msg(
        str`The ${name} range from ${low} to ${high} ${unit} holds no whole step of ${step} ${unit}.`,
      ),
    );
  }
  return null;
}
