import type { FilterSpec } from '../filter/analogue';
import { median } from '../signal/median';
import { bandEnvelope, envelopeOnset } from './band-envelope';
import { throughPath } from './electrical-path';
import { levelOut } from './level-out';
import { meanSpeaker } from './mean-speaker';
import type { CrossoverTerms, MainAtSeats } from './played-sides';
import type { SeatTransfers, Transfer } from './transfer';

/** The direct sound is looked for in a band that reaches this factor below and above the crossover. */
const onsetReach = 3;
/** An envelope sets in where it first comes to these shares of its largest value. */
const onsetShares = [0.3, 0.4, 0.5];
/** Where direct sounds line up is judged in a band that reaches this factor to either side. */
const peakReach = 2.2;
/** An arrival that was read tells as much as the onsets of so many seats. */
const arrivalSeats = 2;
/** Keeps what rises before its time within what is looked at. */
const bareDelaySeconds = 0.02;

/**
 * Delay of the sub at which its direct sound lines up with the mains', seconds: median over seats
 * and mains of what the main comes later than the sub, and what speakers and filters add to that
 * about the crossover. How late a source comes is the onset of its response with its own roll-offs
 * taken out (meanSpeaker, levelOut), mean over three shares of the envelope's peak: without them an
 * onset is sharper than what the room returns is late. What they add is the difference between the
 * envelope's peaks of mean speaker and mean sub through their filters. Where arrivals were read,
 * `arrivalDelaySeconds` being the delay that lines those up, onsets are drawn towards them: an
 * arrival is read from all that a take holds, and counts as much as the onsets of two seats. Null
 * where main or sub is silent at every seat. Throws RangeError for a grid beside the crossover. Own
 * method; accuracy: tests/accuracy.
 */
export function delayCentre(
  mains: readonly MainAtSeats[],
  sub: SeatTransfers,
  { hz, crossoverHz, highPass, lowPass }: CrossoverTerms,
  arrivalDelaySeconds: number | null = null,
): number | null {
  const timesOf = (seats: SeatTransfers, filters: readonly FilterSpec[]): SourceTimes | null => {
    const alone = meanSpeaker(hz, seats);
    if (!alone) return null;
    const path = { filters, delaySeconds: bareDelaySeconds };
    const peak = throughPath([alone], path, hz).flatMap(
      (one) => timeOf(one, hz, crossoverHz, peakReach, [1]) ?? [],
    )[0];
    if (peak === undefined) return null;
    const onsets = levelOut(seats, alone).map((seat) =>
      timeOf(seat, hz, crossoverHz, onsetReach, onsetShares),
    );
    return { onsets, peak };
  };
  const arrivalWeight = arrivalSeats / (arrivalSeats + sub.length);
  const low = timesOf(sub, lowPass);
  if (!low) return null;
  const differences = mains.flatMap(({ seats }) => {
    const high = timesOf(seats, highPass);
    if (!high) return [];
    return high.onsets.flatMap((onset, seat) => {
      const its = low.onsets[seat] ?? null;
      if (onset === null || its === null) return [];
      const later = onset - its;
      const shrunk = later + arrivalWeight * ((arrivalDelaySeconds ?? later) - later);
      return [shrunk + high.peak - low.peak];
    });
  });
  return differences.length === 0 ? null : median(differences);
}

interface SourceTimes {
  /** One per seat, null for silence there. */
  readonly onsets: readonly (number | null)[];
  /** Of what the speaker alone plays through its filters. */
  readonly peak: number;
}

/** Mean of the times an envelope comes to shares of its largest value; null for silence. */
function timeOf(
  transfer: Transfer,
  hz: Float64Array,
  crossoverHz: number,
  reach: number,
  shares: readonly number[],
): number | null {
  const band = { hz, lowHz: crossoverHz / reach, highHz: crossoverHz * reach };
  const envelope = bandEnvelope(transfer, band);
  const times = shares.flatMap((share) => envelopeOnset(envelope, share) ?? []);
  return times.length === 0 ? null : times.reduce((sum, time) => sum + time, 0) / times.length;
}
