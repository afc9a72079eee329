import { throughPath } from '../../dsp/bass/electrical-path';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import type { FilterSpec } from '../../dsp/filter/analogue';
import type { ChannelLabel } from '../system/channel';
import type { BassField } from './bass-field';
import type { BassSettings } from './bass-settings';

/** A processor waits (D − distance)/c with the same D for all; here D is 0, which changes no sum. */
function delayOf(label: ChannelLabel, settings: BassSettings): number | null {
  const metres = settings.distanceMetres[label];
  return metres === undefined ? null : -metres / settings.metresPerSecond;
}

/** A main at every seat through its filters, delay and trim; null where it has no bass or distance. */
export function playMain(
  { hz, mains }: BassField,
  label: ChannelLabel,
  filters: readonly FilterSpec[],
  settings: BassSettings,
): SeatTransfers | null {
  const seats = mains.get(label);
  const delaySeconds = delayOf(label, settings);
  if (!seats || delaySeconds === null) return null;
  const gainDb = settings.trimDb[label] ?? 0;
  const inverted = settings.inverted.includes(label);
  return throughPath(seats, { filters, delaySeconds, gainDb, inverted }, hz);
}

/** All subs together at every seat; null where one of them has no distance. */
export function playSubs(
  { hz, subs }: BassField,
  filters: readonly FilterSpec[],
  settings: BassSettings,
): SeatTransfers | null {
  const played = subs.map(({ channel, seats }) => {
    const delaySeconds = delayOf(channel, settings);
    const gainDb = settings.trimDb[channel] ?? 0;
    const inverted = settings.inverted.includes(channel);
    if (delaySeconds === null) return null;
    return throughPath(seats, { filters: [], delaySeconds, gainDb, inverted }, hz);
  });
  if (played.some((one) => one === null)) return null;
  const together = addSeats(played.flatMap((one) => (one ? [one] : [])));
  return filters.length === 0 ? together : throughPath(together, { filters }, hz);
}

/** Sums at every seat. Throws RangeError for none. */
export function addSeats(sources: readonly SeatTransfers[]): SeatTransfers {
  const [first, ...others] = sources;
  if (!first) throw new RangeError('sources must hold at least one, got none');
  return first.map((transfer, seat) => {
    const re = transfer.re.slice();
    const im = transfer.im.slice();
    for (const other of others) {
      const one = other[seat];
      for (let k = 0; k < re.length; k++) {
        re[k] = (re[k] ?? 0) + (one?.re[k] ?? 0);
        im[k] = (im[k] ?? 0) + (one?.im[k] ?? 0);
      }
    }
    return { re, im };
  });
}
