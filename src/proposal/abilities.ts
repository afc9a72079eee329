import type { FilterSpec } from '../../dsp/filter/analogue';
import { filterOf } from '../reading/take-out-filter';
import type { GroupId } from '../system/channel';
import { usualFilters, type FiltersInForce } from '../system/declared-settings';
import type { FullRangeOption, ProcessorSheet } from '../system/sheet/processor-sheet';
import { stepsOf } from '../system/sheet/steps-of-sheet';
import type { ProcessorSteps } from './proposal';

/** Everything proposals need to know of a processor; plain data, so that it travels to a worker. */
export interface Abilities extends ProcessorSteps {
  readonly oneCrossover: boolean;
  readonly limits: ProcessorSheet['crossover']['limits'];
  /** Null where no sheet says. */
  readonly fullRange: readonly FullRangeOption[] | null;
  /** Empty where there is none, or where no sheet says. */
  readonly subLowPassHz: readonly number[];
  readonly notBelowHighestBedCrossover: boolean;
  readonly lowCutHz: readonly number[];
  readonly distanceUnit: 'm' | 'ft';
  readonly filters: FiltersInForce;
}

/** What a processor can do by its sheet, else by the steps a tuner gave. */
export function abilitiesOf(steps: ProcessorSteps, sheet: ProcessorSheet | null): Abilities {
  if (!sheet) {
    return {
      ...steps,
      oneCrossover: false,
      limits: [],
      fullRange: null,
      subLowPassHz: [],
      notBelowHighestBedCrossover: false,
      lowCutHz: [],
      distanceUnit: steps.distanceUnit ?? 'm',
      filters: usualFilters,
    };
  }
  return {
    ...stepsOf(sheet),
    oneCrossover: sheet.crossover.setting === 'one for all',
    limits: sheet.crossover.limits,
    fullRange: sheet.fullRange,
    subLowPassHz: sheet.subLowPass.stepsHz,
    notBelowHighestBedCrossover: sheet.subLowPass.notBelowHighestBedCrossover,
    lowCutHz: sheet.lowCut.stepsHz,
    distanceUnit: sheet.distance.unit,
    filters: sheet.filters,
  };
}

/** The crossover steps a group may have, Hz, rising; the sheet may tie the bed to the sub low-pass. */
export function stepsFor(abilities: Abilities, group: GroupId): readonly number[] {
  const { crossoverHz, limits, subLowPassHz, notBelowHighestBedCrossover } = abilities;
  const limit = limits.find(({ groups }) => groups.includes(group));
  const isTied = notBelowHighestBedCrossover && !group.endsWith('heights');
  const tiedHz = isTied ? (subLowPassHz.at(-1) ?? Infinity) : Infinity;
  return crossoverHz.filter(
    (step) => step <= tiedHz && (!limit || (step >= limit.lowHz && step <= limit.highHz)),
  );
}

/** The filters that a crossover means. */
export function crossoverFilters(
  { filters }: Abilities,
  crossoverHz: number,
): { readonly highPass: FilterSpec; readonly lowPass: FilterSpec } {
  return {
    highPass: filterOf(filters.highPass, 'high-pass', crossoverHz),
    lowPass: filterOf(filters.subLowPass, 'low-pass', crossoverHz),
  };
}

/** A low-pass of all the subs play. */
export function subLowPassFilter({ filters }: Abilities, hz: number): FilterSpec {
  return filterOf(filters.subLowPass, 'low-pass', hz);
}

/** A low cut of the subs; no sheet names its slope, so it is taken as 12 dB per octave. */
export function lowCutFilter(hz: number): FilterSpec {
  return { family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: hz };
}
