import { msg, str } from '@lit/localize';
import { groupWord } from '../system/group-word';
import type { ChannelLabel, GroupId } from '../system/channel';
import type { CandidateSub } from '../../dsp/bass/crossover-candidates';
import { judgeGroup, type GroupCase, type JudgedGroup } from './group-case';
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

/**
 * A crossover for every group of speakers; one for all where the processor has only one. The subs
 * have one delay for all: the first group that is heard with them sets it, and the steps of the
 * others are judged by what they lose with that.
 */
export function proposeGroups(one: BassCase): CrossoverProposal[] {
  const { members, abilities, bass, bare } = one;
  const inGroup = (group: GroupId) => members.filter(({ channel }) => channel.group === group);
  const hasSubs = inGroup('subs').length > 0;
  let sub = subOf(one);
  const judgedAll: JudgedGroup[] = [];
  const groups = groupOrder.flatMap((group) => {
    const own = inGroup(group);
    if (own.length === 0) return [];
    const stepsHz = stepsOfGroup(one, group);
    if (!hasSubs) {
      return [proposeWithoutSubs(group, own, inGroup('fronts'), abilities, stepsHz)];
    }
    const atSeats = (label: ChannelLabel) => bass && playMain(bass.field, label, [], bare);
    const given: GroupCase = { group, members: own, stepsHz, abilities, sub, atSeats };
    const judged = stepsHz.length === 0 ? null : judgeGroup(given);
    const proposal = proposeCrossover(given, judged);
    if (judged) {
      judgedAll.push(judged);
      const setAt = subsBy(judged, abilities.oneCrossover ? null : typedCrossover(proposal));
      if (sub && !sub.setAt && setAt) sub = { ...sub, setAt };
    }
    return [proposal];
  });
  return abilities.oneCrossover ? shareOne(groups, judgedAll) : groups;
}

/**
 * How a group that was judged sets the subs: as at its own step; at each step where one crossover is
 * for all, `typedHz` being null. Null where it has no sum there.
 */
function subsBy({ candidates }: JudgedGroup, typedHz: number | null): CandidateSub['setAt'] | null {
  const sumAt = (hz: number) => candidates.find(({ stepHz }) => stepHz === hz)?.sum ?? null;
  if (typedHz === null) return candidates.some(({ sum }) => sum) ? sumAt : null;
  const sum = sumAt(typedHz);
  return sum && (() => sum);
}

/** The subs together, as all groups find them. */
function subOf(one: BassCase): CandidateSub | null {
  const { bass, bare } = one;
  const seats = trimmedSubs(one);
  const [first] = bass?.field.subs ?? [];
  if (!seats || !bass || !first) return null;
  const sub = { seats, upperHz: bass.combined.upperHz };
  const arrival = bare.distanceMetres[first.channel];
  if (arrival === undefined) return sub;
  return { ...sub, arrivalDelaySeconds: -arrival / bare.metresPerSecond };
}

/** The steps a group may have: where one crossover is for all, those that all may have. */
function stepsOfGroup({ abilities, members }: BassCase, group: GroupId): readonly number[] {
  const own = stepsFor(abilities, group);
  if (!abilities.oneCrossover) return own;
  const others = new Set(members.map(({ channel }) => channel.group));
  others.delete('subs');
  return own.filter((hz) => [...others].every((other) => stepsFor(abilities, other).includes(hz)));
}

/**
 * One crossover given to all: of the steps that no group is too small for, the one that costs all
 * groups together least; the highest that a group asks for where there is none.
 */
function shareOne(
  groups: readonly CrossoverProposal[],
  judged: readonly JudgedGroup[],
): CrossoverProposal[] {
  const asked = groups.flatMap((one) => {
    const hz = typedCrossover(one);
    return hz === null ? [] : [{ hz, group: one.group }];
  });
  const [first] = asked;
  if (!first) return [...groups];
  const highest = asked.reduce((high, one) => (one.hz > high.hz ? one : high), first);
  const best = leastForAll(judged);
  const hz = best ?? highest.hz;
  const sentence =
    best === null || best === highest.hz
      ? msg(
          str`The processor has one crossover for all, and the ${groupWord(highest.group)} ask for ${sayHz(hz)}.`,
        )
      : msg(
          str`The processor has one crossover for all: of the steps that no group is too small for, ${sayHz(hz)} serves all together best.`,
        );
  return groups.map((one) => {
    const own = typedCrossover(one);
    if (own === null || own === hz) return one;
    const shared = { sentence, grounds: [] };
    const reasons = [...one.reasons, shared];
    const isPossible = one.crossoverHz !== null;
    return {
      ...one,
      crossoverHz: isPossible ? hz : null,
      nearestHz: isPossible ? null : hz,
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

/**
 * The crossovers in force: the tuner's own where they are steps of the processor, else proposed. Where
 * one crossover is for all, the tuner's own for any group is that of all.
 */
export function crossoversInForce(
  groups: readonly CrossoverProposal[],
  one: BassCase,
  { crossoverHz, fullRange }: ProposalChoices,
): Crossovers {
  const ownOf = (group: GroupId): number | null => {
    const own = crossoverHz[group];
    return own !== undefined && stepsOfGroup(one, group).includes(own) ? own : null;
  };
  const chosen = groups.flatMap(({ group }) => ownOf(group) ?? []);
  const shared = one.abilities.oneCrossover ? (chosen[0] ?? null) : null;
  return Object.fromEntries(
    groups.map((each) => {
      if (fullRange.includes(each.group)) return [each.group, null];
      return [each.group, shared ?? ownOf(each.group) ?? typedCrossover(each)];
    }),
  );
}

/** The step that breaks nothing for any group and costs all together least; null for none. */
function leastForAll(judged: readonly JudgedGroup[]): number | null {
  const [first, ...others] = judged.filter(({ decidedBy }) => decidedBy !== null);
  if (!first) return null;
  const costs = first.candidates.flatMap(({ stepHz, costDb, breaks }) => {
    const same = others.map((one) => one.candidates.find((step) => step.stepHz === stepHz));
    const fits = breaks.length === 0 && same.every((step) => step?.breaks.length === 0);
    return fits
      ? [{ stepHz, costDb: same.reduce((sum, step) => sum + (step?.costDb ?? 0), costDb) }]
      : [];
  });
  costs.sort((a, b) => a.costDb - b.costDb || a.stepHz - b.stepHz);
  return costs[0]?.stepHz ?? null;
}
