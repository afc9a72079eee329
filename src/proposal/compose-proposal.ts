import type { ChannelLabel, GroupId, Layout } from '../system/channel';
import type { Abilities } from './abilities';
import { alignSubs, type AlignableGroup, type AlignedSubs } from './align-subs';
import { trimmedSubs, type BassCase } from './bass-case';
import type { BassSettings } from './bass-settings';
import type { ProposalChoices } from './choices';
import { proposeEqualiser } from './propose-equaliser';
import { adviseFullRange } from './full-range';
import { lfeProposal } from './lfe';
import { findMissing } from './missing-settings';
import { priceOwn } from './own-crossover';
import { predictGroup } from './predict-group';
import type { GroupProposal, MissingSetting, Proposal } from './proposal';
import { proposeChannels } from './propose-channels';
import type { CrossoverProposal } from './propose-crossover';
import {
  crossoversInForce,
  proposeGroups,
  proposedCrossovers,
  type Crossovers,
} from './propose-groups';
import { proposeLedger } from './propose-ledger';
import { proposeSubs } from './propose-subs';
import { turnedOver } from './turned-over';
import { adviseLowCut, adviseSubLowPass, type GroupCrossover } from './sub-filter-advice';
import type { SubFilterProposal } from './subs-proposal';

export interface CompositionTerms {
  readonly layout: Layout;
  readonly choices: ProposalChoices;
  readonly seats: readonly string[];
  readonly sums: Proposal['sums'];
  /** What is known to be missing already. */
  readonly missing: readonly MissingSetting[];
}

/** Decides one setting after another, each on what stands before it, and puts all together. */
export function composeProposal(one: BassCase, terms: CompositionTerms): Proposal {
  const { choices, layout, seats, sums } = terms;
  const { abilities, bare, bass, members, readings } = one;
  const groups = proposeGroups(one);
  const proposed = proposedCrossovers(groups);
  const crossovers = crossoversInForce(groups, one, choices);
  const subMembers = members.filter(({ channel }) => channel.kind === 'sub');
  const lowPassFor = (some: Crossovers): SubFilterProposal =>
    adviseSubLowPass(crossoversOf(groups, some), abilities);
  const lowPass = lowPassFor(crossovers);
  const lowCut = adviseLowCut(subMembers, abilities);
  const filters = {
    subLowPassHz: ownStep(choices.subLowPassHz, lowPassSteps(abilities, crossovers)) ?? lowPass.hz,
    lowCutHz:
      choices.lowCutHz === 'off'
        ? null
        : (ownStep(choices.lowCutHz, abilities.lowCutHz) ?? lowCut.hz),
  };
  const found =
    bass && trimmedSubs(one)
      ? alignSubs(bass.field, bass.combined, alignable(groups, crossovers), abilities, {
          ...bare,
          ...filters,
        })
      : null;
  const aligned = found && 'kind' in found ? asWished(found, one, choices) : null;
  const channels = proposeChannels(one, aligned, crossovers);
  const typed: BassSettings = {
    ...bare,
    ...filters,
    crossoverHz: crossovers,
    distanceMetres: valuesOf(channels.map((each) => [each.channel, each.distanceMetres])),
    trimDb: valuesOf(channels.map((each) => [each.channel, each.levelTrimDb])),
    inverted: [...bare.inverted, ...(aligned?.inverted ?? [])],
  };
  const fullNow = groups.flatMap(({ group }) => (crossovers[group] === null ? [group] : []));
  const told = groups.map((each): GroupProposal => {
    const own = members.filter(({ channel }) => channel.group === each.group);
    const fullRange = adviseFullRange(each.group, own, subMembers, abilities, fullNow);
    const hz = crossovers[each.group] ?? null;
    const sum =
      bass && hz !== null ? predictGroup(bass.field, each.channels, hz, abilities, typed) : null;
    return { ...each, fullRange, own: priceOwn(each, hz, sum, fullRange) };
  });
  const canBeFull = told.flatMap(({ group, fullRange }): GroupId[] =>
    fullRange.kind === 'possible' || fullRange.kind === 'too small' ? [group] : [],
  );
  const asProposed = {
    crossoverHz: proposed,
    subLowPassHz: lowPassFor(proposed).hz,
    lowCutHz: lowCut.hz,
  };
  // Mends are sought together with the sums: both take a while.
  const mendable = sums === 'coming' ? null : canBeFull;
  const inForce = { crossoverHz: crossovers, ...filters };
  const subs = proposeSubs({ one, aligned, crossovers, lowPass, lowCut, typed, choices });
  return {
    format: 'leadline-proposal',
    version: 2,
    layout: layout.name,
    simulated: readings.simulated,
    seats,
    sums,
    settings: typed,
    groups: told,
    channels,
    subs,
    lfe: lfeProposal(subMembers.length > 0),
    ledger: {
      proposed: proposeLedger(one.ledger, asProposed, mendable),
      own: isSame(asProposed, inForce) ? null : proposeLedger(one.ledger, inForce, mendable),
    },
    equaliser: proposeEqualiser(one, typed, choices.equaliserBands),
    missing: [
      ...terms.missing,
      ...(found && 'what' in found ? [found] : []),
      ...findMissing(one, { groups: told, channels, sums, choices }),
    ],
  };
}

function crossoversOf(
  groups: readonly CrossoverProposal[],
  crossovers: Crossovers,
): GroupCrossover[] {
  return groups.flatMap(({ group }) => {
    const hz = crossovers[group] ?? null;
    const kind = group.endsWith('heights') ? ('height' as const) : ('bed' as const);
    return hz === null ? [] : [{ group, kind, hz }];
  });
}

function alignable(groups: readonly CrossoverProposal[], crossovers: Crossovers): AlignableGroup[] {
  return groups.flatMap(({ group, channels }) => {
    const crossoverHz = crossovers[group] ?? null;
    return crossoverHz === null ? [] : [{ group, channels, crossoverHz }];
  });
}

/** The subs later than they were aligned, and turned over, as the tuner wishes. */
function asWished(
  aligned: AlignedSubs,
  { bare }: BassCase,
  { subsLaterSeconds, subsTurned }: ProposalChoices,
): AlignedSubs {
  const { wishedMetres, inverted } = aligned;
  const nearer = subsLaterSeconds * bare.metresPerSecond;
  return {
    ...aligned,
    wishedMetres: new Map([...wishedMetres].map(([label, m]) => [label, m - nearer])),
    inverted: subsTurned ? turnedOver(inverted, [...wishedMetres.keys()]) : inverted,
  };
}

/** The tuner's own step where the processor has it. */
function ownStep(own: number | null, steps: readonly number[]): number | null {
  return own !== null && steps.includes(own) ? own : null;
}

/** Steps of the sub low-pass; a sheet may let none lie below the highest crossover of the bed. */
function lowPassSteps(
  { subLowPassHz, notBelowHighestBedCrossover }: Abilities,
  crossovers: Crossovers,
): readonly number[] {
  const bedHz = Object.entries(crossovers).flatMap(([group, hz]) =>
    group.endsWith('heights') ? [] : (hz ?? []),
  );
  const lowest = notBelowHighestBedCrossover ? Math.max(0, ...bedHz) : 0;
  return subLowPassHz.filter((hz) => hz >= lowest);
}

function valuesOf(
  entries: readonly (readonly [ChannelLabel, number | null])[],
): Partial<Record<ChannelLabel, number>> {
  return Object.fromEntries(entries.filter(([, value]) => value !== null));
}

function isSame(a: object, b: object): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
