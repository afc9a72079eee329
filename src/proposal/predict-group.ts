import { scanDelays } from '../../dsp/bass/delay-scan';
import { crossoverBand } from '../../dsp/bass/log-band';
import { findDip, sumPowers } from '../../dsp/bass/predict-sum';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import type { FilterSpec } from '../../dsp/filter/analogue';
import type { ChannelLabel } from '../system/channel';
import { crossoverFilters, lowCutFilter, subLowPassFilter, type Abilities } from './abilities';
import type { BassField } from './bass-field';
import type { BassSettings } from './bass-settings';
import { playMain, playSubs } from './play-bass';
import type { PredictedLoss } from './proposal';

const asPlayed = { delaySeconds: 0, inverted: false };

/**
 * What a group and the subs lose about a crossover with given settings; null where no speaker of
 * the group, or no sub, has bass and a distance.
 */
export function predictGroup(
  field: BassField,
  channels: readonly ChannelLabel[],
  crossoverHz: number,
  abilities: Abilities,
  settings: BassSettings,
): PredictedLoss | null {
  const { hz } = field;
  const sides = playSides(field, channels, crossoverHz, abilities, settings);
  if (!sides) return null;
  const { mains, subs } = sides;
  const losses = mains.map(({ channel, seats }) => ({
    channel,
    lossDb: scanDelays(hz, crossoverHz, [{ seats, weight: 1 }], subs).lossDb(asPlayed),
  }));
  const powers = mains.flatMap(({ seats }) =>
    seats.flatMap((main, seat) => {
      const low = subs[seat];
      return low ? [sumPowers(main, low)] : [];
    }),
  );
  const dip = findDip(hz, powers, crossoverBand(hz, crossoverHz));
  return {
    lossDb: losses.reduce((sum, { lossDb }) => sum + lossDb, 0) / losses.length,
    dipDb: dip.db,
    dipHz: dip.hz,
    worst: losses.reduce((most, one) => (one.lossDb > most.lossDb ? one : most)),
  };
}

/** The filters on the way to the subs at a crossover. */
export function subFilters(
  crossoverHz: number,
  abilities: Abilities,
  { subLowPassHz, lowCutHz }: Pick<BassSettings, 'subLowPassHz' | 'lowCutHz'>,
): FilterSpec[] {
  return [
    crossoverFilters(abilities, crossoverHz).lowPass,
    ...(subLowPassHz === null ? [] : [subLowPassFilter(abilities, subLowPassHz)]),
    ...(lowCutHz === null ? [] : [lowCutFilter(lowCutHz)]),
  ];
}

interface Sides {
  readonly mains: readonly { readonly channel: ChannelLabel; readonly seats: SeatTransfers }[];
  readonly subs: SeatTransfers;
}

function playSides(
  field: BassField,
  channels: readonly ChannelLabel[],
  crossoverHz: number,
  abilities: Abilities,
  settings: BassSettings,
): Sides | null {
  const { highPass } = crossoverFilters(abilities, crossoverHz);
  const subs = playSubs(field, subFilters(crossoverHz, abilities, settings), settings);
  const mains = channels.flatMap((channel) => {
    const seats = playMain(field, channel, [highPass], settings);
    return seats ? [{ channel, seats }] : [];
  });
  return subs && mains.length > 0 ? { mains, subs } : null;
}
