import type { GroupProposal, Proposal } from '../../src/proposal/proposal';
import type { ChannelReading, Readings } from '../../src/reading/reading';
import { applyTogether } from '../../src/reading/apply-together';
import type { BenchState } from '../../src/session/bench';
import type { ChannelLabel, GroupId } from '../../src/system/channel';
import { currentReadings } from '../probe/take/take-lanes';

/** What the Propose stage shows of the bench: one group, and the speaker examined in it. */
export interface ProposeView {
  /** With the roll-offs read together in place of those of this position. */
  readonly readings: Readings;
  readonly proposal: Proposal;
  /** All groups of the plan that have a speaker, subs last. */
  readonly groups: readonly GroupId[];
  readonly group: GroupId;
  /** Null for the subs, which hand their bass to nobody. */
  readonly groupProposal: GroupProposal | null;
  /** Readings of the group's speakers, the examined one first. */
  readonly members: readonly ChannelReading[];
  /** The crossover in force: chosen, else proposed. */
  readonly crossoverHz: number | null;
  readonly chosenHz: number | null;
}

/** Null while there is nothing to propose from. */
export function proposeView(state: BenchState, selected: ChannelLabel | null): ProposeView | null {
  const { layout, document } = state;
  const here = currentReadings(state);
  const proposal = state.proposal?.layout === layout.name ? state.proposal : null;
  if (!here || !proposal) return null;
  const readings = applyTogether(here, state.together);
  const selectedGroup = layout.channels.find(({ label }) => label === selected)?.group;
  const hasSubs = layout.channels.some(({ group }) => group === 'subs');
  const groups = [
    ...proposal.groups.map(({ group }) => group).filter((group) => group !== 'subs'),
    ...(hasSubs ? (['subs'] as const) : []),
  ];
  const group = groups.find((one) => one === selectedGroup) ?? groups[0];
  if (!group) return null;
  const groupProposal = proposal.groups.find((one) => one.group === group) ?? null;
  const examined = group === selectedGroup ? selected : (groupProposal?.decidedBy ?? null);
  const labels = layout.channels.filter((one) => one.group === group).map(({ label }) => label);
  const chosenHz = document.chosenCrossoverHz[group] ?? null;
  return {
    readings,
    proposal,
    groups,
    group,
    groupProposal,
    members: readings.channels
      .filter(({ channel }) => labels.includes(channel))
      .sort((a, b) => Number(b.channel === examined) - Number(a.channel === examined)),
    crossoverHz: chosenHz ?? groupProposal?.crossoverHz ?? null,
    chosenHz,
  };
}

/** The crossover in force for a group: what the tuner chose, else what is proposed. */
export function crossoverInForce(state: BenchState, group: GroupId): number | null {
  const proposed = state.proposal?.groups.find((one) => one.group === group)?.crossoverHz ?? null;
  return state.document.chosenCrossoverHz[group] ?? proposed;
}
