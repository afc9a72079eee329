import { msg, str } from '@lit/localize';
import type { Readings } from '../reading/reading';
import type { BassCase } from './bass-case';
import type { ChannelMeasurement } from './channel-measurement';
import type { ProposalChoices } from './choices';
import { sayList } from './phrases';
import type { ChannelProposal, GroupProposal, MissingSetting, Proposal } from './proposal';

interface Found {
  readonly groups: readonly GroupProposal[];
  readonly channels: readonly ChannelProposal[];
  readonly sums: Proposal['sums'];
  readonly choices: ProposalChoices;
}

/** Everything that could not be proposed, each with the one action that would settle it. */
export function findMissing(one: BassCase, found: Found): MissingSetting[] {
  const { members, bass, ledger } = one;
  const hasSubs = members.some(({ channel }) => channel.kind === 'sub');
  return [
    ...missingOfChannels(one, found.channels),
    ...found.groups.flatMap((each) => (hasSubs ? missingOfGroup(each) : [])),
    ...(hasSubs && bass === null && found.sums === 'there' ? [notCaptured(one)] : []),
    ...(bass ? leftOut(one, found.groups) : []),
    ...ledger.unknown.map((label): MissingSetting => ({
      channel: label,
      what: 'bass ledger',
      sentence: msg(str`The bass ledger leaves ${label} out: its roll-off is not known.`),
      action: msg(str`Repeat the sweep of ${label}, louder or with less noise.`),
    })),
  ];
}

function missingOfChannels(
  { members }: BassCase,
  channels: readonly ChannelProposal[],
): MissingSetting[] {
  return channels.flatMap((each) => {
    const member = members.find(({ channel }) => channel.label === each.channel);
    const action = actionFor(member, each.channel);
    return [
      ...(each.distance === null
        ? [
            {
              channel: each.channel,
              what: 'distance' as const,
              sentence: each.distanceReason,
              action,
            },
          ]
        : []),
      ...(each.level === null
        ? [{ channel: each.channel, what: 'level' as const, sentence: each.levelReason, action }]
        : []),
    ];
  });
}

function actionFor(member: ChannelMeasurement | undefined, label: string): string {
  if (!member?.reading) return msg(str`Take again with ${label} in the layout that was played.`);
  const known = member.reading.distanceMetres !== null && member.reading.levelDb !== null;
  return known
    ? msg(str`Move ${label}, or delay it elsewhere, so that the range of the processor is enough.`)
    : msg(str`Repeat the sweep of ${label}.`);
}

function missingOfGroup(group: GroupProposal): MissingSetting[] {
  const unknown = group.decidedBy === null;
  if (group.crossoverHz !== null && !unknown) return [];
  return [
    {
      channel: group.decidedBy,
      what: 'crossover',
      sentence: group.reason,
      action: unknown
        ? msg(
            str`Repeat ${sayList(group.channels)} with less noise, or type what their sheet says.`,
          )
        : msg(
            str`Set ${group.nearestHz ?? msg('full range')}${group.nearestHz === null ? '' : ' Hz'} for want of a better step, and keep the level low.`,
          ),
    },
  ];
}

function notCaptured({ readings }: BassCase): MissingSetting {
  return {
    channel: null,
    what: 'sub alignment',
    sentence: msg(
      'The subs cannot be set against the mains, because no sub has its bass in these readings: they go by arrival.',
    ),
    action: isFiltered(readings)
      ? msg('Switch all crossovers to full range for a moment and take again.')
      : msg('Take again, so that the bass of all channels is kept with the readings.'),
  };
}

function isFiltered({ inForce }: Readings): boolean {
  return Object.values(inForce?.crossoverHz ?? {}).some((hz) => hz !== null);
}

/** Speakers that no sum holds. */
function leftOut({ members, bass, bare }: BassCase, groups: readonly GroupProposal[]) {
  const crossed = groups.filter(({ crossoverHz, nearestHz }) => crossoverHz ?? nearestHz);
  const labels = members.flatMap(({ channel }) => {
    const { label, group } = channel;
    const heard = bass?.field.mains.has(label) && bare.distanceMetres[label] !== undefined;
    return heard || !crossed.some((one) => one.group === group) ? [] : [label];
  });
  const lost = members.flatMap(({ channel }) =>
    channel.kind === 'sub' && !bass?.field.subs.some((one) => one.channel === channel.label)
      ? [channel.label]
      : [],
  );
  const all = [...labels, ...lost];
  if (all.length === 0) return [];
  return [
    {
      channel: all[0] ?? null,
      what: 'sub alignment' as const,
      sentence: msg(
        str`No sum holds ${sayList(all)}: their bass or their distance was not captured at every seat, or lies under the noise.`,
      ),
      action: msg(str`Repeat ${sayList(all)} at the seats where they are missing.`),
    },
  ];
}
