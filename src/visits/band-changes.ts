import { logGrid } from '../../dsp/response/smoothing';
import { thirdOctaveAt } from '../reading/third-octave';
import type { PairedSpeaker } from './pair-positions';
import { noiseHalfDb } from './reading-error';

/** How a third octave of a response changed, dB. */
export interface BandChange {
  readonly hz: number;
  readonly db: number;
  /** Half width of the 90 % interval, the microphone's place aside. */
  readonly half: number;
}

/** Two responses at one place agree within this, dB. */
const repeatDb = 0.3;
/** Nearer to the noise a response says nothing, dB. */
const leastMarginDb = 10;
/** Independent lines of a third octave, at the least. */
const lines = 6;

/** Third octaves of a speaker's response, level aside, now less then; those in the noise left out. */
export function bandChanges(
  { now, before }: Pick<PairedSpeaker, 'now' | 'before'>,
  [lowHz, highHz]: readonly [number, number],
): BandChange[] {
  const [is, was] = [now.curves?.response, before.curves?.response];
  if (!is || !was) return [];
  return [...logGrid(lowHz, highHz, 6)].flatMap((hz): BandChange[] => {
    const [one, other] = [thirdOctaveAt(is, hz), thirdOctaveAt(was, hz)];
    if (!one || !other || Math.min(one.marginDb, other.marginDb) < leastMarginDb) return [];
    const noise = [one, other].map(({ marginDb }) => noiseHalfDb(marginDb, lines));
    return [{ hz, db: one.db - other.db, half: Math.hypot(repeatDb, ...noise) }];
  });
}

/** The band that surely changed most; null for none. */
export function worstOf(bands: readonly BandChange[]): BandChange | null {
  const size = ({ db, half }: BandChange): number => Math.abs(db) - half;
  return bands.reduce<BandChange | null>(
    (worst, band) => (!worst || size(band) > size(worst) ? band : worst),
    null,
  );
}
