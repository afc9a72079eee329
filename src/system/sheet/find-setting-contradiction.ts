import { msg, str } from '@lit/localize';
import { firstFinding, firstRepeat } from './find-first';
import type { CrossoverLimit, ProcessorSheet } from './processor-sheet';

/** What cannot be true of a sheet's steps and ranges, as part of a sentence; null when nothing. */
export function findSettingContradiction(sheet: ProcessorSheet): string | null {
  const { crossover, subLowPass, lowCut, distance, level } = sheet;
  return (
    stepsContradict('crossover.stepsHz', crossover.stepsHz) ??
    limitsContradict(crossover.limits, crossover.stepsHz) ??
    stepsContradict('subLowPass.stepsHz', subLowPass.stepsHz) ??
    lowPassContradicts(sheet) ??
    stepsContradict('lowCut.stepsHz', lowCut.stepsHz) ??
    fullRangeContradicts(sheet) ??
    rangeContradicts('distance', ['low', 'high', 'step'], distance) ??
    rangeContradicts('level', ['lowDb', 'highDb', 'stepDb'], {
      low: level.lowDb,
      high: level.highDb,
      step: level.stepDb,
    })
  );
}

function stepsContradict(field: string, steps: readonly number[]): string | null {
  return firstFinding(steps, (step, index) => {
    const before = steps[index - 1] ?? 0;
    return step > before
      ? null
      : msg(str`"${field}[${index}]" is ${step} and comes after ${before}`);
  });
}

function limitsContradict(
  limits: readonly CrossoverLimit[],
  steps: readonly number[],
): string | null {
  const groups: string[] = [];
  return firstFinding(limits, (limit, index) => {
    const where = `"crossover.limits[${index}]"`;
    groups.push(...limit.groups);
    const repeat = firstRepeat(groups);
    if (repeat >= 0) return msg(str`${where} limits the ${groups[repeat]} a second time`);
    return steps.some((step) => step >= limit.lowHz && step <= limit.highHz)
      ? null
      : msg(str`${where} leaves no step between ${limit.lowHz} and ${limit.highHz} Hz`);
  });
}

function lowPassContradicts({ crossover, subLowPass }: ProcessorSheet): string | null {
  const highest = subLowPass.stepsHz.at(-1) ?? 0;
  const lowest = crossover.stepsHz[0] ?? 0;
  if (!subLowPass.notBelowHighestBedCrossover || highest >= lowest) return null;
  return msg(str`"subLowPass.stepsHz" ends at ${highest} Hz, below every crossover step`);
}

function fullRangeContradicts({ fullRange }: ProcessorSheet): string | null {
  const groups = fullRange.map((option) => option.group);
  const repeat = firstRepeat(groups);
  if (repeat >= 0) return msg(str`"fullRange[${repeat}].group" stands in the list before`);
  const locked = new Set(fullRange.flatMap((option) => option.unlocks));
  const open = groups.filter((group) => !locked.has(group));
  for (const group of open) {
    for (const next of fullRange.find((option) => option.group === group)?.unlocks ?? []) {
      if (!open.includes(next)) open.push(next);
    }
  }
  return firstFinding(fullRange, ({ group, unlocks }, index) => {
    const stranger = unlocks.find((next) => !groups.includes(next));
    if (stranger)
      return msg(str`"fullRange[${index}].unlocks" names the ${stranger}, not a "group" there`);
    return open.includes(group)
      ? null
      : msg(str`"fullRange[${index}].group" is unlocked only by what it unlocks itself`);
  });
}

function rangeContradicts(
  field: string,
  [lowName, highName, stepName]: readonly [string, string, string],
  { low, high, step }: { low: number; high: number; step: number },
): string | null {
  if (!(low < high)) return msg(str`"${field}.${lowName}" is ${low} and "${highName}" ${high}`);
  return Math.floor(high / step + 1e-9) < Math.ceil(low / step - 1e-9)
    ? msg(str`"${field}.${stepName}" is ${step}, and no whole step lies between ${low} and ${high}`)
    : null;
}
