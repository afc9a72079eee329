import type { BassSettings } from '../proposal/bass-settings';
import type { ProposalChoices } from '../proposal/choices';
import type { GroupProposal, Proposal } from '../proposal/proposal';
import { turnedOver } from '../proposal/turned-over';

/** What is typed for a group as proposed, Hz; null for full range. */
export function proposedHz({
  crossoverHz,
  nearestHz,
}: Pick<GroupProposal, 'crossoverHz' | 'nearestHz'>): number | null {
  return crossoverHz ?? nearestHz;
}

/** The crossover of a group with some choices, Hz; null for full range. */
export function hzWith(
  group: Pick<GroupProposal, 'group' | 'crossoverHz' | 'nearestHz'>,
  choices: Pick<ProposalChoices, 'crossoverHz' | 'fullRange'>,
): number | null {
  if (choices.fullRange.includes(group.group)) return null;
  return choices.crossoverHz[group.group] ?? proposedHz(group);
}

/**
 * The settings of a proposal, made with some choices, as they would be with others. The subs stay
 * aligned as they are but for what is tried of them, so that this follows a drag.
 */
export function trySettings(
  { settings, groups, subs }: Pick<Proposal, 'settings' | 'groups' | 'subs'>,
  made: ProposalChoices,
  tried: ProposalChoices,
): BassSettings {
  const isSub = (label: string): boolean =>
    subs?.subs.some(({ channel }) => channel === label) ?? false;
  const nearer = (tried.subsLaterSeconds - made.subsLaterSeconds) * settings.metresPerSecond;
  const louder = tried.bassPreferenceDb - made.bassPreferenceDb;
  const { lowCutHz, subLowPassHz } = tried;
  return {
    ...settings,
    crossoverHz: Object.fromEntries(groups.map((one) => [one.group, hzWith(one, tried)])),
    distanceMetres: moved(settings.distanceMetres, isSub, -nearer),
    trimDb: moved(settings.trimDb, isSub, louder),
    inverted:
      tried.subsTurned === made.subsTurned
        ? settings.inverted
        : turnedOver(
            settings.inverted,
            (subs?.subs ?? []).map(({ channel }) => channel),
          ),
    subLowPassHz: subLowPassHz ?? subs?.lowPass.hz ?? null,
    lowCutHz: lowCutHz === 'off' ? null : (lowCutHz ?? subs?.lowCut.hz ?? null),
  };
}

function moved<Label extends string>(
  values: Readonly<Partial<Record<Label, number>>>,
  isSub: (label: string) => boolean,
  by: number,
): Partial<Record<Label, number>> {
  const entries = Object.entries<number | undefined>(values);
  return Object.fromEntries(
    entries.map(([label, value]) => [
      label,
      isSub(label) && value !== undefined ? value + by : value,
    ]),
  ) as Partial<Record<Label, number>>;
}
