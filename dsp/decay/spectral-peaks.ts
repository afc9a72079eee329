import type { PowerSpectrum } from '../response/power-spectrum';

/** A peak of a spectrum. */
export interface SpectralPeak {
  readonly hz: number;
  readonly db: number;
  /** How far it stands over the higher of the valleys that part it from higher peaks, dB. */
  readonly prominenceDb: number;
}

/**
 * Peaks of a spectrum between lowHz and highHz that stand `leastDb` over the valleys around them,
 * rising in frequency, each at the top of a parabola in dB through its neighbours. A valley beyond
 * the range's end does not count. Throws RangeError unless 0 ≤ lowHz < highHz.
 */
export function spectralPeaks(
  { power, hzPerBin }: PowerSpectrum,
  [lowHz, highHz]: readonly [number, number],
  leastDb: number,
): readonly SpectralPeak[] {
  if (!(lowHz >= 0 && lowHz < highHz)) {
    throw new RangeError(`peaks need 0 ≤ lowHz < highHz, got ${lowHz}, ${highHz}`);
  }
  const first = Math.max(1, Math.ceil(lowHz / hzPerBin));
  const last = Math.min(power.length - 2, Math.floor(highHz / hzPerBin));
  const level = (bin: number): number => 10 * Math.log10(Math.max(power[bin] ?? 0, 1e-300));
  /** Lowest level on the way to the next that is higher, or to the range's end. */
  const valley = (from: number, step: 1 | -1): number => {
    const top = level(from);
    let lowest = top;
    for (let bin = from + step; bin >= first - 1 && bin <= last + 1; bin += step) {
      const here = level(bin);
      if (here > top) break;
      lowest = Math.min(lowest, here);
    }
    return lowest;
  };
  const peaks: SpectralPeak[] = [];
  for (let bin = first; bin <= last; bin++) {
    const [before, here, after] = [level(bin - 1), level(bin), level(bin + 1)];
    if (!(here > before && here >= after)) continue;
    const prominenceDb = here - Math.max(valley(bin, -1), valley(bin, 1));
    if (prominenceDb < leastDb) continue;
    const bend = before - 2 * here + after;
    const shift = bend < 0 ? (0.5 * (before - after)) / bend : 0;
    const db = here - 0.25 * (before - after) * shift;
    peaks.push({ hz: (bin + shift) * hzPerBin, db, prominenceDb });
  }
  return peaks;
}
