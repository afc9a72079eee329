import type { SweepSpec } from '../signal/sweep';
import { fraction } from './band-energy';

/** Deconvolution is flat between these multiples of the sweep's ends; bands keep inside. */
const lowestOfStart = 1.6;
const highestOfEnd = 0.86;
const lowestHz = 16;

/** The highest frequency at which a harmonic may lie. */
export function harmonicEndHz({ endHz }: SweepSpec): number {
  return highestOfEnd * endHz;
}

/** Frequencies of fundamentals whose second harmonic the sweep reaches: 1000·2^(n/6) Hz. */
export function fundamentalGrid(sweep: SweepSpec): number[] {
  const place = (hz: number): number => fraction * Math.log2(hz / 1000);
  const first = Math.ceil(place(Math.max(lowestHz, lowestOfStart * sweep.startHz)));
  const last = Math.floor(place(harmonicEndHz(sweep) / 2));
  return Array.from(
    { length: Math.max(last - first + 1, 0) },
    (_, n) => 1000 * 2 ** ((first + n) / fraction),
  );
}
