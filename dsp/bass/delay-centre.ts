import { median } from '../signal/median';
import { bandEnvelope, envelopeOnset } from './band-envelope';
import type { PlayedSides } from './played-sides';
import type { Transfer } from './transfer';

/** Bands reach these factors below and above the crossover. */
const reaches = [2.2, 3];
/** An envelope sets in where it first comes to these shares of its largest value. */
const onsetShares = [0.3, 0.4, 0.5];

/**
 * Delay of the sub at which its direct sound lines up with the mains', seconds: median over seats
 * and mains of the main's onset less the sub's, each the mean of onsets at three shares of the
 * envelope's peak in two bands about the crossover. A low-pass rises more slowly than a high-pass,
 * so that onsets lie apart when peaks lie together: what the filters alone do of that is taken off.
 * The room moves an onset by a fraction of a period; the median keeps the right one of the periods.
 * Null where main or sub is silent at every seat.
 */
export function delayCentre(played: PlayedSides): number | null {
  const { mains, sub, bareMain, bareSub } = played;
  const onset = (transfer: Transfer): number | null => meanTime(transfer, played, onsetShares);
  const peak = (transfer: Transfer): number | null => meanTime(transfer, played, [1]);
  const low = sub.map(onset);
  const differences = mains.flatMap(({ seats }) =>
    seats.flatMap((main, seat) => less(onset(main), low[seat] ?? null) ?? []),
  );
  if (differences.length === 0) return null;
  const apart = less(onset(bareMain), onset(bareSub)) ?? 0;
  const together = less(peak(bareMain), peak(bareSub)) ?? 0;
  return median(differences) - apart + together;
}

function less(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a - b;
}

/** Mean over the bands and shares of the time an envelope comes to them; null for silence. */
function meanTime(
  transfer: Transfer,
  { hz, crossoverHz }: PlayedSides,
  shares: readonly number[],
): number | null {
  const times = reaches.flatMap((reach) => {
    const band = { hz, lowHz: crossoverHz / reach, highHz: crossoverHz * reach };
    const envelope = bandEnvelope(transfer, band);
    return shares.flatMap((share) => envelopeOnset(envelope, share) ?? []);
  });
  return times.length === 0 ? null : times.reduce((sum, time) => sum + time, 0) / times.length;
}
