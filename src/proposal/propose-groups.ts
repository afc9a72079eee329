import type { GroupId } from '../system/channel';
import { groupIds } from '../system/group-ids';
import { stepsFor } from './abilities';
import { trimmedSubs, type BassCase } from './bass-case';
import type { ProposalChoices } from './choices';
import { sayHz } from './phrases';
import { playMain } from './play-bass';
import { proposeCrossover, type CrossoverProposal } from './propose-crossover';
import { sayReasons } from './reason';
import { proposeWithoutSubs } from './without-subs';

/** Subs have no crossover of their own. */
const groupOrder = groupIds.filter((group) => group !== 'subs');

/** A crossover for every group of speakers; one for all where the processor has only one. */
export function proposeGroups(one: BassCase): CrossoverProposal[] {
  const { members, abilities, bass, bare } = one;
  const inGroup = (group: GroupId) => members.filter(({ channel }) => channel.group === group);
  const hasSubs = inGroup('subs').length > 0;
  const seats = trimmedSubs(one);
  const sub = seats && bass ? { seats, upperHz: bass.combined.upperHz } : null;
  const groups = groupOrder.flatMap((group) => {
    const own = inGroup(group);
    if (own.length === 0) return [];
    if (!hasSubs) return [proposeWithoutSubs(group, own, inGroup('fronts'), abilities)];
    return [
      proposeCrossover({
        group,
        members: own,
        stepsHz: stepsFor(abilities, group),
        abilities,
        sub,
        atSeats: (label) => bass && playMain(bass.field, label, [], bare),
      }),
    ];
  });
  return abilities.oneCrossover && hasSubs ? shareOne(groups) : groups;
}

/** The highest crossover that a group asks for, given to all. */
function shareOne(groups: readonly CrossoverProposal[]): CrossoverProposal[] {
  const asked = groups.flatMap((one) => {
    const hz = typedCrossover(one);
    return hz === null ? [] : [{ hz, group: one.group }];
  });
  const [first] = asked;
  if (!first) return [...groups];
  const most = asked.reduce((high, one) => (one.hz > high.hz ? one : high), first);
  return groups.map((one) => {
    if (typedCrossover(one) === most.hz) return one;
    const shared = {
      sentence: `The processor has one crossover for all, and the ${most.group} ask for ${sayHz(most.hz)}.`,
      grounds: [],
    };
    const reasons = [...one.reasons, shared];
    const isPossible = one.crossoverHz !== null;
    return {
      ...one,
      crossoverHz: isPossible ? most.hz : null,
      nearestHz: isPossible ? null : most.hz,
      reasons,
      reason: sayReasons(reasons),
    };
  });
}

/** What is typed for a group when the tuner keeps to the proposal; null for full range. */
export function typedCrossover({
  crossoverHz,
  nearestHz,
}: Pick<CrossoverProposal, 'crossoverHz' | 'nearestHz'>): number | null {
  return crossoverHz ?? nearestHz;
}

export type Crossovers = Readonly<Partial<Record<GroupId, number | null>>>;

/** The proposed crossovers. */
export function proposedCrossovers(groups: readonly CrossoverProposal[]): Crossovers {
  return Object.fromEntries(groups.map((one) => [one.group, typedCrossover(one)]));
}

/** The crossovers in force: the tuner's own where they are steps of the processor, else proposed. */
export function crossoversInForce(
  groups: readonly CrossoverProposal[],
  { abilities }: BassCase,
  { crossoverHz, fullRange }: ProposalChoices,
): Crossovers {
  return Object.fromEntries(
    groups.map((one) => {
      const own = crossoverHz[one.group];
      if (fullRange.includes(one.group)) return [one.group, null];
      const offered = own !== undefined && stepsFor(abilities, one.group).includes(own);
      return [one.group, offered ? own : typedCrossover(one)];
    }),
  );
}
