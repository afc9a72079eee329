import type { LedgerMend } from '../../../src/proposal/ledger-proposal';
import type { ProposalChoices } from '../../../src/proposal/choices';
import type { GroupProposal } from '../../../src/proposal/proposal';
import type { Bench } from '../../../src/session/bench';
import type { SessionDocument } from '../../../src/session/document';
import type { GroupId } from '../../../src/system/channel';
import { proposedHz } from '../../../src/workbench/try-settings';

/** All that the tuner decided. */
export function choicesOf({ choices, chosenCrossoverHz }: SessionDocument): ProposalChoices {
  return { ...choices, crossoverHz: chosenCrossoverHz };
}

/** Makes choices the session's, under a name that undo can show. */
export function changeChoices(bench: Bench | null, name: string, chosen: ProposalChoices): void {
  const { crossoverHz, ...choices } = chosen;
  bench?.change(name, (document) => ({ ...document, choices, chosenCrossoverHz: crossoverHz }));
}

/** Choices with the crossover of some groups set; null for full range. The proposed one is no choice. */
export function withCrossover(
  chosen: ProposalChoices,
  groups: readonly GroupProposal[],
  hz: number | null,
): ProposalChoices {
  const names = groups.map(({ group }) => group);
  const others = Object.entries(chosen.crossoverHz).filter(
    ([group]) => !names.some((name) => name === group),
  );
  const own = groups.flatMap((one) =>
    hz === null || proposedHz(one) === hz ? [] : [[one.group, hz] as const],
  );
  const full = groups.flatMap((one) =>
    hz === null && proposedHz(one) !== null ? [one.group] : [],
  );
  return {
    ...chosen,
    crossoverHz: Object.fromEntries([...others, ...own]),
    fullRange: [...chosen.fullRange.filter((group) => !names.includes(group)), ...full],
  };
}

/** The groups a crossover is set for at once: all of them where the processor has only one. */
export function groupsSetBy(
  groups: readonly GroupProposal[],
  group: GroupId,
  oneCrossover: boolean,
): readonly GroupProposal[] {
  return oneCrossover ? groups : groups.filter((one) => one.group === group);
}

/** Choices after one of the ledger's mends. */
export function withMend(
  chosen: ProposalChoices,
  change: LedgerMend['change'],
  groups: readonly GroupProposal[],
): ProposalChoices {
  switch (change.setting) {
    case 'crossover':
      return withCrossover(chosen, groupsSetBy(groups, change.group, false), change.hz);
    case 'sub low-pass':
      return { ...chosen, subLowPassHz: change.hz };
    case 'low cut':
      return { ...chosen, lowCutHz: change.hz ?? 'off' };
  }
}

/** Whether the tuner keeps to everything that is proposed. */
export function isNothingChosen(chosen: ProposalChoices): boolean {
  return (
    Object.keys(chosen.crossoverHz).length === 0 &&
    chosen.fullRange.length === 0 &&
    chosen.bassPreferenceDb === 0 &&
    chosen.subLowPassHz === null &&
    chosen.lowCutHz === null &&
    chosen.subsLaterSeconds === 0 &&
    !chosen.subsTurned
  );
}
