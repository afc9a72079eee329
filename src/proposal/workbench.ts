import type { LedgerLine } from '../../dsp/bass/bass-ledger';
import type { Readings } from '../reading/reading';
import type { GroupId, Layout } from '../system/channel';
import { groupIds } from '../system/group-ids';
import { abilitiesOf, type Abilities } from './abilities';
import { bassField, type BassField } from './bass-field';
import type { BassSettings } from './bass-settings';
import { ledgerGround, ledgerLines, type LedgerGround } from './ledger';
import { predictGroup } from './predict-group';
import type { PredictedLoss, ProcessorSteps } from './proposal';
import { measuredMembers, type ProposalOptions } from './proposal-options';
import { usableSeats } from './usable-seats';
import type { ChannelMeasurement } from './channel-measurement';

/** What sums and ledger are recomputed on as a setting is dragged; made once for readings. */
export interface Workbench {
  readonly members: readonly ChannelMeasurement[];
  readonly abilities: Abilities;
  /** Null where no sub's bass was captured: there are no sums then. */
  readonly field: BassField | null;
  readonly ledger: LedgerGround;
}

/** Gathers a workbench, in a millisecond or two; the readings must be of the layout. */
export function workbenchOf(
  readings: Readings,
  layout: Layout,
  processor: ProcessorSteps,
  options: ProposalOptions = {},
): Workbench {
  const { sheet = null, seat = 'Seat 1', otherSeats = [] } = options;
  const abilities = abilitiesOf(processor, sheet);
  const members = measuredMembers(readings, layout, options);
  const { seats } = usableSeats({ name: seat, readings }, otherSeats, layout);
  const labels = members.map(({ channel }) => channel.label);
  return {
    members,
    abilities,
    field: bassField(labels, seats),
    ledger: ledgerGround(members, abilities),
  };
}

export interface Recomputed {
  /** One per group that was asked for and has a crossover and its bass. */
  readonly sums: readonly { readonly group: GroupId; readonly sum: PredictedLoss }[];
  readonly ledger: readonly LedgerLine[];
}

/** Sums of some groups, default all, and the ledger of all channels with given settings. */
export function recompute(
  { members, abilities, field, ledger }: Workbench,
  settings: BassSettings,
  groups: readonly GroupId[] = groupIds,
): Recomputed {
  const sums = groups.flatMap((group) => {
    const hz = settings.crossoverHz[group] ?? null;
    const channels = members.flatMap(({ channel }) =>
      channel.group === group ? [channel.label] : [],
    );
    const sum =
      field && hz !== null ? predictGroup(field, channels, hz, abilities, settings) : null;
    return sum ? [{ group, sum }] : [];
  });
  return { sums, ledger: ledgerLines(ledger, settings) };
}
