import type { BassSettings } from '../../src/proposal/bass-settings';
import { nothingChosen, type ProposalChoices } from '../../src/proposal/choices';
import type { GroupProposal, Proposal } from '../../src/proposal/proposal';
import type { Workbench } from '../../src/proposal/workbench';
import { applyTogether } from '../../src/reading/apply-together';
import type { Readings } from '../../src/reading/reading';
import type { Bench, BenchState } from '../../src/session/bench';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { trySettings } from '../../src/workbench/try-settings';
import { currentReadings } from '../probe/take/take-lanes';
import { choicesOf } from './choices/change-choices';
import { steadyProposal } from './steady-proposal';
import { workbenchInHand } from './workbench-in-hand';

/** What the Propose stage shows of the bench. */
export interface ProposeView {
  readonly layout: Layout;
  /** With the roll-offs read together in place of those of this position. */
  readonly readings: Readings;
  readonly proposal: Proposal;
  /** True while sums and alignment of the newest choices are still worked out. */
  readonly coming: boolean;
  readonly workbench: Workbench;
  /** What the tuner decided. */
  readonly choices: ProposalChoices;
  /** What the proposal was made with. */
  readonly made: ProposalChoices;
  /** Settings in force, own ones included, and those proposed. */
  readonly settings: BassSettings;
  readonly proposed: BassSettings;
  /** The group in view. */
  readonly group: GroupProposal;
  /** The speaker examined in it. */
  readonly channel: ChannelLabel;
}

/** Null while there is nothing to propose from. */
export function proposeView(
  bench: Bench,
  state: BenchState,
  selected: ChannelLabel | null,
): ProposeView | null {
  const here = currentReadings(state);
  const steady = steadyProposal(bench, state);
  if (!here || !steady) return null;
  const { proposal, made } = steady;
  const { groups } = proposal;
  const group =
    groups.find(({ channels }) => channels.some((one) => one === selected)) ?? groups[0];
  const [first] = group?.channels ?? [];
  if (!group || !first) return null;
  const choices = choicesOf(state.document);
  const examined = group.channels.find((one) => one === selected);
  return {
    layout: state.layout,
    readings: applyTogether(here, state.together),
    proposal,
    coming: state.proposal?.sums !== 'there',
    workbench: workbenchInHand(bench, state, here),
    choices,
    made,
    settings: trySettings(proposal, made, choices),
    proposed: trySettings(proposal, made, nothingChosen),
    group,
    channel: examined ?? group.decidedBy ?? first,
  };
}
