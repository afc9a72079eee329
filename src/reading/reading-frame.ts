import { lengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import type { Arrival } from '../../dsp/timing/arrival';
import type { ChannelLabel } from '../system/channel';

/** What arrivals are turned into distances by. */
export interface ReadingFrame {
  /** The reference speaker's arrival; null when it could not be told. */
  readonly reference: Arrival | null;
  /** When sound left, by the loopback; null without one. */
  readonly departure: Arrival | null;
  /** By the loopback where there is one, else by tape. */
  readonly referenceDistanceMetres: number;
  readonly metresPerSecond: number;
}

/** Tape distances that make sense, metres; a loopback's must too. */
const possible = [0.1, 30] as const;
const largestDifference = 0.3;

/**
 * The frame of a take: with a loopback the reference speaker's distance is the way its sound took,
 * and the tape's is compared with it; one that no room can have leaves the loopback aside.
 */
export function frameTake(
  label: ChannelLabel,
  reference: Arrival | null,
  departure: Arrival | null,
  tapeMetres: number,
  metresPerSecond: number,
): { readonly frame: ReadingFrame; readonly notes: readonly string[] } {
  const taped = {
    reference,
    departure: null,
    referenceDistanceMetres: tapeMetres,
    metresPerSecond,
  };
  if (!departure) return { frame: taped, notes: [] };
  if (!reference) return { frame: { ...taped, departure }, notes: [] };
  const metres = metresPerSecond * (reference.seconds - departure.seconds);
  if (!(metres >= possible[0] && metres <= possible[1])) {
    const note = msg(
      str`By the loopback ${label} would stand ${lengthText(metres)} away, which no room allows: something between the output and the speaker delays the sound. Distances rest on the tape.`,
    );
    return { frame: taped, notes: [note] };
  }
  const notes =
    Math.abs(metres - tapeMetres) > largestDifference
      ? [
          msg(
            str`${label} stands ${lengthText(metres)} away by the loopback and ${lengthText(tapeMetres)} by the tape. The loopback's is used; a processor that delays the sound makes it too long by ${lengthText(metresPerSecond / 1000)} a millisecond.`,
          ),
        ]
      : [];
  return { frame: { ...taped, departure, referenceDistanceMetres: metres }, notes };
}
