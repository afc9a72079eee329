import { metresPerFoot } from '../../../src/locale/length-text';
import { millisecondsText, numberText, withUnit } from '../../../src/locale/number-text';
import { msg } from '@lit/localize';
import type { ProposalChoices } from '../../../src/proposal/choices';
import type { BassSettings } from '../../../src/proposal/bass-settings';
import type { Proposal } from '../../../src/proposal/proposal';

import type { ProposeView } from '../propose-view';

const lowestHz = 40;

/** How far all subs together can be moved from their proposed distance, in steps of the processor. */
export interface SubDelayRange {
  readonly stepSeconds: number;
  /** Whole steps to either side, a period of the crossover. */
  readonly most: number;
}

/** The range of a slider over all subs; null where there is no sub whose distance is known. */
export function subDelayRange({ proposal, workbench }: ProposeView): SubDelayRange | null {
  const { subs, settings } = proposal;
  const known = subs?.subs.some(({ channel }) => settings.distanceMetres[channel] !== undefined);
  if (!subs || !known) return null;
  const stepSeconds = workbench.abilities.distanceStepMetres / settings.metresPerSecond;
  const crossoverHz = Math.max(lowestHz, subs.alignment?.crossoverHz ?? 80);
  return { stepSeconds, most: Math.max(1, Math.round(1 / crossoverHz / stepSeconds)) };
}

/** Distances of the subs as they would be typed, with how much later that is. */
export function subDelayText(
  { subs }: Proposal,
  choices: Pick<ProposalChoices, 'subsLaterSeconds' | 'subsTurned'>,
  settings: BassSettings,
  unit: 'm' | 'ft',
): string {
  const { subsLaterSeconds: later, subsTurned } = choices;
  const how =
    later === 0
      ? msg('as proposed')
      : `${millisecondsText(Math.abs(later))} ${later > 0 ? msg('later') : msg('earlier')}`;
  const turned = subsTurned ? [msg('turned over')] : [];
  const distances = (subs?.subs ?? []).flatMap(({ channel }) => {
    const metres = settings.distanceMetres[channel];
    return metres === undefined ? [] : [`${channel} ${distanceText(metres, unit)}`];
  });
  return [how, ...turned, ...distances].join(' · ');
}

/** A distance in the processor's unit. */
export function distanceText(metres: number, unit: 'm' | 'ft'): string {
  return unit === 'm'
    ? withUnit(numberText(metres, 2), 'm')
    : withUnit(numberText(metres / metresPerFoot, 1), 'ft');
}

/** Where the slider rests as proposed, and where the subs would do nearly as well, in steps. */
export function subDelayMarks(
  { proposal }: Pick<ProposeView, 'proposal'>,
  { stepSeconds, most }: SubDelayRange,
): number[] {
  const others = proposal.subs?.alignment?.alternatives ?? [];
  const steps = others.flatMap(({ laterSeconds, turned }) =>
    turned ? [] : [Math.round(laterSeconds / stepSeconds)],
  );
  return [...new Set([0, ...steps.filter((step) => Math.abs(step) <= most)])];
}
