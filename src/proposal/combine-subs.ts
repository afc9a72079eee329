import { alignSeveralSubs } from '../../dsp/bass/align-several-subs';
import { throughPath } from '../../dsp/bass/electrical-path';
import { logBand } from '../../dsp/bass/log-band';
import type { SubSetting } from '../../dsp/bass/seat-spread';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import { powerToDb } from '../../dsp/level/decibels';
import type { ChannelLabel } from '../system/channel';
import type { BassField } from './bass-field';
import { addSeats } from './play-bass';
import type { SubSpread } from './subs-proposal';
import { subReach } from './sub-reach';

/** The subs as one source. */
export interface CombinedSubs {
  /** Of each sub beside the first, which keeps its own. */
  readonly settings: ReadonlyMap<ChannelLabel, SubSetting>;
  readonly together: SeatTransfers;
  /** How much louder all are than the first alone, 30 to 80 Hz, mean power over seats, dB. */
  readonly overFirstDb: number;
  /** Null for one sub or one seat. */
  readonly spread: SubSpread | null;
  readonly upperHz: number | null;
}

const plain: SubSetting = { delaySeconds: 0, gainDb: 0, inverted: false };
/** What serves so little better than what is wired is not worth typing, dB. */
const leastGainDb = 0.05;
const levelHz = [30, 80] as const;

/** Sets several subs against each other for even bass at all seats; one sub stays as it is. */
export function combineSubs({ hz, subs }: BassField): CombinedSubs {
  const sources = subs.map(({ seats }) => seats);
  const first = sources[0] ?? [];
  // One seat tells nothing of how gains should share the bass.
  const gains = first.length > 1 ? {} : { mostGainDb: 0 };
  const aligned = sources.length > 1 ? alignSeveralSubs(sources, { hz, ...gains }) : null;
  const better = aligned !== null && aligned.wired.cost - aligned.cost >= leastGainDb;
  const settings = subs.map((_, i) => (better ? (aligned.settings[i] ?? plain) : plain));
  const together = addSeats(
    sources.map((seats, i) => throughPath(seats, { filters: [], ...(settings[i] ?? plain) }, hz)),
  );
  return {
    settings: new Map(subs.map(({ channel }, i) => [channel, settings[i] ?? plain])),
    together,
    overFirstDb: powerToDb(levelPower(hz, together)) - powerToDb(levelPower(hz, first)),
    spread:
      aligned && first.length > 1
        ? {
            deviationDb: better ? aligned.deviationDb : aligned.wired.deviationDb,
            asWiredDb: aligned.wired.deviationDb,
            firstAloneDb: aligned.alone.deviationDb,
          }
        : null,
    upperHz: subReach(hz, together),
  };
}

function levelPower(hz: Float64Array, seats: SeatTransfers): number {
  const { first, weights } = logBand(hz, levelHz[0], levelHz[1]);
  let power = 0;
  for (const { re, im } of seats) {
    for (const [n, weight] of weights.entries()) {
      power += weight * ((re[first + n] ?? 0) ** 2 + (im[first + n] ?? 0) ** 2);
    }
  }
  return power;
}
