import { median } from '../signal/median';
import { bandEnvelope, envelopeOnset } from './band-envelope';
import type { ScannedMain } from './delay-scan';
import type { SeatTransfers, Transfer } from './transfer';

/** The band reaches this factor below and above the crossover. */
const reach = 2.2;
/** An envelope sets in where it first comes to this share of its largest value. */
const onsetShare = 0.3;

/**
 * Delay of the sub at which it sets in with the mains: median over seats and mains of the main's
 * onset less the sub's in the band about the crossover, filters included, seconds. The room moves
 * an onset by a fraction of a period; the median keeps the right one of the periods. Null where
 * main or sub is silent at every seat.
 */
export function delayCentre(
  hz: Float64Array,
  crossoverHz: number,
  mains: readonly ScannedMain[],
  sub: SeatTransfers,
): number | null {
  const onset = (transfer: Transfer): number | null =>
    envelopeOnset(
      bandEnvelope(transfer, { hz, lowHz: crossoverHz / reach, highHz: crossoverHz * reach }),
      onsetShare,
    );
  const low = sub.map(onset);
  const differences = mains.flatMap(({ seats }) =>
    seats.flatMap((main, seat) => {
      const [mine, its] = [onset(main), low[seat] ?? null];
      return mine === null || its === null ? [] : [mine - its];
    }),
  );
  return differences.length === 0 ? null : median(differences);
}
