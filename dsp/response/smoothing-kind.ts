import type { PowerSpectrum } from './power-spectrum';
import { smoothOver } from './smoothing';

/** How a response is smoothed: not at all, over a fraction of an octave, or over a varying one. */
export type SmoothingKind =
  'none' | '1/1' | '1/2' | '1/3' | '1/6' | '1/12' | '1/24' | '1/48' | 'variable';

/** All kinds, from the finest; the varying one stands last. */
export const smoothingKinds: readonly SmoothingKind[] = [
  'none',
  '1/48',
  '1/24',
  '1/12',
  '1/6',
  '1/3',
  '1/2',
  '1/1',
  'variable',
];

/** Where the varying width begins and ends to grow, Hz, and its widths there, octaves. */
const variableHz = [100, 4000] as const;
const variableOctaves = [1 / 48, 1 / 3] as const;

/**
 * Width of the band round `hz` in octaves; 0 for 'none'. The varying width is 1/48 octave up to
 * 100 Hz and 1/3 octave from 4 kHz; between, w = (1/48)·16^s with s = ½(1 − cos πt) and
 * t = ln(f/100)/ln 40, so that neither it nor its slope jumps, and both edges of the band rise with
 * f. In the bass the modes of a room stand apart and a cut must meet them one by one; in the treble
 * the fine shape differs within a hand's breadth of the seat, and only its trend says something of
 * the speaker. Throws RangeError unless hz > 0. Source: own rule.
 */
export function smoothingOctaves(kind: SmoothingKind, hz: number): number {
  if (!(hz > 0 && hz < Infinity)) throw new RangeError(`hz must be positive, got ${hz}`);
  if (kind === 'none') return 0;
  if (kind !== 'variable') return 1 / Number(kind.slice(2));
  const [lowHz, highHz] = variableHz;
  const [narrow, wide] = variableOctaves;
  const along = Math.min(Math.max(Math.log(hz / lowHz) / Math.log(highHz / lowHz), 0), 1);
  return narrow * (wide / narrow) ** (0.5 * (1 - Math.cos(Math.PI * along)));
}

/**
 * Power at each frequency, smoothed by a kind: the mean over its band, every bin standing from half
 * a bin below to half a bin above it; the bin itself for 'none' and for bands narrower than a bin.
 * Bands are cut off at half the sample rate; throws RangeError for a frequency outside.
 */
export function smoothKind(
  spectrum: PowerSpectrum,
  hz: ArrayLike<number>,
  kind: SmoothingKind,
): Float64Array {
  if (kind !== 'none') return smoothOver(spectrum, hz, (each) => smoothingOctaves(kind, each));
  const { power, hzPerBin } = spectrum;
  return Float64Array.from(hz, (each) => {
    const value = power[Math.round(each / hzPerBin)];
    if (!(each > 0) || value === undefined) {
      const top = (power.length - 1) * hzPerBin;
      throw new RangeError(`frequencies must lie between 0 and ${top} Hz, got ${each}`);
    }
    return value;
  });
}
