import type { BassSettings } from '../../../src/proposal/bass-settings';
import type { ProposalChoices } from '../../../src/proposal/choices';
import type { PredictedLoss } from '../../../src/proposal/proposal';
import { recompute, type Recomputed } from '../../../src/proposal/workbench';
import {
  filterCurves,
  workbenchCurves,
  type WorkbenchCurves,
} from '../../../src/workbench/workbench-curves';
import { hzWith, trySettings } from '../../../src/workbench/try-settings';
import { groupColour } from '../../group-colour';
import type { ProposeView } from '../propose-view';
import type { WorkbenchInput } from './workbench-traces';

/** Everything the workbench shows for some choices, recomputed as a handle is dragged. */
export interface WorkbenchState {
  readonly choices: ProposalChoices;
  readonly settings: BassSettings;
  /** Null for full range. */
  readonly crossoverHz: number | null;
  readonly input: WorkbenchInput;
  /** Of the group in view; null where it cannot be told. */
  readonly sum: PredictedLoss | null;
  /** Null while the settings are the proposed ones. */
  readonly proposedSum: PredictedLoss | null;
  readonly ledger: Recomputed['ledger'];
}

/** What the proposed settings give; it does not change while a handle is held. */
export interface ProposedState {
  readonly curves: WorkbenchCurves | null;
  readonly sum: PredictedLoss | null;
}

/** Filters are drawn here where no bass was captured, Hz. */
const bareHz = Array.from({ length: 121 }, (_, n) => 15 * 2 ** (n / 24));

/** Works out what the proposed settings give for the speaker in view. */
export function proposedState(view: ProposeView): ProposedState {
  const { workbench, group, proposed } = view;
  return {
    curves: curvesOf(view, proposed.crossoverHz[group.group] ?? null, proposed),
    sum: recompute(workbench, proposed, [group.group]).sums[0]?.sum ?? null,
  };
}

/** Works out the workbench for choices beside those of the view. */
export function workbenchState(
  view: ProposeView,
  choices: ProposalChoices,
  asProposed: ProposedState,
): WorkbenchState {
  const { workbench, proposal, made, group, channel, readings, proposed } = view;
  const { abilities } = workbench;
  const settings = trySettings(proposal, made, choices);
  const crossoverHz = hzWith(group, choices);
  const curves = curvesOf(view, crossoverHz, settings);
  const same = JSON.stringify(settings) === JSON.stringify(proposed);
  const { sums, ledger } = recompute(workbench, settings, [group.group]);
  return {
    choices,
    settings,
    crossoverHz,
    ledger,
    sum: sums[0]?.sum ?? null,
    proposedSum: same ? null : asProposed.sum,
    input: {
      channel,
      colour: groupColour(group.group),
      curves,
      proposed: same ? null : asProposed.curves,
      filters:
        crossoverHz === null
          ? null
          : filterCurves(curves?.hz ?? bareHz, crossoverHz, abilities, settings),
      reading: readings.channels.find((one) => one.channel === channel)?.curves ?? null,
    },
  };
}

function curvesOf(
  { workbench: { field, abilities }, channel }: ProposeView,
  hz: number | null,
  settings: BassSettings,
): WorkbenchCurves | null {
  return field && workbenchCurves(field, channel, hz, abilities, settings);
}
