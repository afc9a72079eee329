import { msg, str } from '@lit/localize';
import { throughPath } from '../../dsp/bass/electrical-path';
import { filterPower } from '../../dsp/bass/filter-power';
import { logBand, smoothOnGrid } from '../../dsp/bass/log-band';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import type { FilterSpec } from '../../dsp/filter/analogue';
import { powerToDb } from '../../dsp/level/decibels';
import { crossoverFilters, type Abilities } from '../proposal/abilities';
import type { BassField } from '../proposal/bass-field';
import type { BassSettings } from '../proposal/bass-settings';
import { addSeats, playMain, playSubs } from '../proposal/play-bass';
import { subFilters } from '../proposal/predict-group';
import type { ChannelLabel } from '../system/channel';

/**
 * What a speaker and the subs do about a crossover; all curves on `hz`, dB re the speaker's own mean
 * power from 180 to 480 Hz over all seats, averaged over 1/12 octave.
 */
export interface WorkbenchCurves {
  readonly hz: readonly number[];
  /** The speaker without a filter, mean power over seats. */
  readonly measured: readonly number[];
  /** Through its high-pass, and the subs through all their filters; null where there are none. */
  readonly speaker: readonly number[];
  readonly subs: readonly number[] | null;
  /** Both together: mean power over seats, and at every seat. */
  readonly sum: readonly number[];
  readonly seats: readonly { readonly name: string; readonly sum: readonly number[] }[];
}

/** The electrical filters by themselves, dB; null for full range. */
export interface FilterCurves {
  readonly highPass: readonly number[];
  readonly lowPass: readonly number[];
}

const fraction = 12;
const levelHz = [180, 480] as const;

/**
 * Curves of one speaker with given settings; null where it was not captured at the seats of the
 * field, or has no distance. Fast enough to follow a drag: about 240 frequencies a seat.
 */
export function workbenchCurves(
  field: BassField,
  channel: ChannelLabel,
  crossoverHz: number | null,
  abilities: Abilities,
  settings: BassSettings,
): WorkbenchCurves | null {
  const { hz } = field;
  const alone = playMain(field, channel, [], settings);
  if (!alone) return null;
  const flat = meanLevel(hz, alone);
  if (!(flat > 0)) return null;
  const draw = (seats: SeatTransfers): number[] => {
    const smooth = smoothOnGrid(hz, meanPower(seats), fraction);
    return Array.from(smooth, (power) => powerToDb(Math.max(0, power) / flat));
  };
  if (crossoverHz === null) {
    const measured = draw(alone);
    return {
      hz: Array.from(hz),
      measured,
      speaker: measured,
      subs: null,
      sum: measured,
      seats: eachSeat(field, alone, draw),
    };
  }
  const { highPass } = crossoverFilters(abilities, crossoverHz);
  const main = throughPath(alone, { filters: [highPass] }, hz);
  const low = playSubs(field, subFilters(crossoverHz, abilities, settings), settings);
  const sum = low ? addSeats([main, low]) : main;
  return {
    hz: Array.from(hz),
    measured: draw(alone),
    speaker: draw(main),
    subs: low && draw(low),
    sum: draw(sum),
    seats: eachSeat(field, sum, draw),
  };
}

/** The filters of a crossover, with the sub's low-pass and low cut in the subs' way. */
export function filterCurves(
  hz: readonly number[],
  crossoverHz: number,
  abilities: Abilities,
  settings: Pick<BassSettings, 'subLowPassHz' | 'lowCutHz'>,
): FilterCurves {
  const draw = (filters: readonly FilterSpec[]): number[] =>
    hz.map((f) => powerToDb(filters.reduce((power, spec) => power * filterPower(spec, f), 1)));
  return {
    highPass: draw([crossoverFilters(abilities, crossoverHz).highPass]),
    lowPass: draw(subFilters(crossoverHz, abilities, settings)),
  };
}

function eachSeat(
  { seats }: BassField,
  transfers: SeatTransfers,
  draw: (seats: SeatTransfers) => number[],
): WorkbenchCurves['seats'] {
  return transfers.map((one, n) => ({
    name: seats[n] ?? msg(str`Seat ${n + 1}`),
    sum: draw([one]),
  }));
}

function meanPower(seats: SeatTransfers): Float64Array {
  const power = new Float64Array(seats[0]?.re.length ?? 0);
  for (const { re, im } of seats) {
    for (let k = 0; k < power.length; k++) {
      power[k] = (power[k] ?? 0) + ((re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2) / seats.length;
    }
  }
  return power;
}

function meanLevel(hz: Float64Array, seats: SeatTransfers): number {
  const power = meanPower(seats);
  const { first, weights } = logBand(hz, levelHz[0], levelHz[1]);
  return weights.reduce((sum, weight, n) => sum + weight * (power[first + n] ?? 0), 0);
}
