import { msg, str } from '@lit/localize';
import { stepsFor } from '../../../src/proposal/abilities';
import type { BassSettings } from '../../../src/proposal/bass-settings';
import { hzWith, proposedHz } from '../../../src/workbench/try-settings';
import { hzText } from '../../../src/locale/number-text';
import type { ChartHandle } from '../../charts/workbench/chart-handle';
import type { ProposeView } from '../propose-view';
import { groupName } from '../group-words';
import type { ProposalChoices } from '../../../src/proposal/choices';

/** The highest crossover of the bed, which some processors let no sub low-pass lie below. */
export function highestBedHz({ crossoverHz }: Pick<BassSettings, 'crossoverHz'>): number {
  return Math.max(
    0,
    ...Object.entries(crossoverHz).map(([group, hz]) =>
      group.endsWith('heights') ? 0 : (hz ?? 0),
    ),
  );
}

/** Steps the sub low-pass may have with some crossovers, Hz. */
export function lowPassSteps(
  { workbench }: Pick<ProposeView, 'workbench'>,
  settings: Pick<BassSettings, 'crossoverHz'>,
): number[] {
  const { subLowPassHz, notBelowHighestBedCrossover } = workbench.abilities;
  const least = notBelowHighestBedCrossover ? highestBedHz(settings) : 0;
  return subLowPassHz.filter((hz) => hz >= least);
}

/** What can be dragged in the chart: the group's crossover, and the subs' low-pass. */
export function workbenchHandles(
  view: ProposeView,
  choices: ProposalChoices,
  settings: BassSettings,
): ChartHandle[] {
  const { group, layout, workbench, proposed } = view;
  const hz = hzWith(group, choices);
  const name = groupName(group.group, layout);
  const stepsHz = stepsFor(workbench.abilities, group.group);
  const advised = proposedHz(group);
  const { subLowPassHz } = settings;
  const lowPasses = lowPassSteps(view, settings);
  return [
    ...(hz === null || stepsHz.length === 0
      ? []
      : [
          {
            id: 'crossover',
            label: msg(str`Crossover of ${name}`),
            text: msg(str`crossover ${hzText(hz)}`),
            hz,
            stepsHz,
            proposedHz: advised === hz ? null : advised,
            end: 'bottom' as const,
          },
        ]),
    ...(subLowPassHz === null || lowPasses.length === 0
      ? []
      : [
          {
            id: 'low-pass',
            label: msg('Sub low-pass'),
            text: msg(str`sub low-pass ${hzText(subLowPassHz)}`),
            hz: subLowPassHz,
            stepsHz: lowPasses,
            proposedHz: proposed.subLowPassHz === subLowPassHz ? null : proposed.subLowPassHz,
            end: 'top' as const,
          },
        ]),
  ];
}
