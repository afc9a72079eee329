import { throughPath } from '../../dsp/bass/electrical-path';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { Readings } from '../reading/reading';
import type { Abilities } from './abilities';
import { bassField, type BassField, type SeatReadings } from './bass-field';
import type { BassSettings } from './bass-settings';
import type { ChannelMeasurement } from './channel-measurement';
import { combineSubs, type CombinedSubs } from './combine-subs';
import { ledgerGround, type LedgerGround } from './ledger';
import { wiredInverted } from './most-inverted';
import { usefulPath } from './propose-distances';
import { wishedTrims, type LevelCase } from './propose-levels';

/** All of a proposal that no setting changes. */
export interface BassCase {
  readonly members: readonly ChannelMeasurement[];
  readonly readings: Readings;
  readonly abilities: Abilities;
  /** Null where no sub's bass was captured, or it is left for later. */
  readonly bass: { readonly field: BassField; readonly combined: CombinedSubs } | null;
  readonly ledger: LedgerGround;
  readonly levels: LevelCase;
  /** Distances by arrival, trims as wished and wrong wires swapped, nothing else set. */
  readonly bare: BassSettings;
}

/** Gathers what a proposal rests on; without `withSums` the captured bass is left aside. */
export function bassCase(
  members: readonly ChannelMeasurement[],
  seats: readonly [SeatReadings, ...SeatReadings[]],
  abilities: Abilities,
  preferenceDb: number,
  withSums: boolean,
): BassCase {
  const { readings } = seats[0];
  const labels = members.map(({ channel }) => channel.label);
  const field = withSums ? bassField(labels, seats) : null;
  const bass = field && { field, combined: combineSubs(field) };
  const levels: LevelCase = {
    members,
    reference: readings.reference,
    processor: abilities,
    subs: {
      preferenceDb,
      gainDb: new Map(
        [...(bass?.combined.settings ?? [])].map(([label, one]) => [label, one.gainDb]),
      ),
      overFirstDb: bass?.combined.overFirstDb ?? null,
      first: field?.subs[0]?.channel ?? null,
    },
  };
  return {
    members,
    readings,
    abilities,
    bass,
    ledger: ledgerGround(members, abilities),
    levels,
    bare: {
      crossoverHz: {},
      distanceMetres: Object.fromEntries(
        members.flatMap((member) => {
          const metres = usefulPath(member);
          return metres !== null && metres > 0 ? [[member.channel.label, metres]] : [];
        }),
      ),
      trimDb: Object.fromEntries(wishedTrims(levels)),
      inverted: wiredInverted(members),
      subLowPassHz: null,
      lowCutHz: null,
      metresPerSecond: speedOfSound(readings.temperatureCelsius),
    },
  };
}

/** The subs together with the trim wished for them. */
export function trimmedSubs({ bass, bare }: BassCase): SeatTransfers | null {
  if (!bass) return null;
  const [first] = bass.field.subs;
  const gainDb = (first && bare.trimDb[first.channel]) ?? 0;
  return throughPath(bass.combined.together, { filters: [], gainDb }, bass.field.hz);
}
