import { bandEdges, bandMidpoints } from '../level/bands';
import { integratePower, type PowerSpectrum } from '../response/power-spectrum';

/** Mean squares in fractional-octave bands. */
export interface OctaveBands {
  /** Exact midpoints, Hz. */
  readonly hz: Float64Array;
  readonly power: Float64Array;
}

/**
 * Mean square in every 1/fraction-octave band of IEC 61260-1 whose midpoint lies between lowHz and
 * highHz, from the mean square of each bin (one-sided). A bin's power stands evenly over its width
 * and is shared by the bands it reaches into. Ideal edges, no filter skirts. Pink noise reads the
 * same in all bands. Throws RangeError as bandMidpoints does. Source: IEC 61260-1:2014, 5.4, 5.5.
 */
export function octaveBands(
  spectrum: PowerSpectrum,
  fraction: number,
  lowHz: number,
  highHz: number,
): OctaveBands {
  const hz = bandMidpoints(lowHz, highHz, fraction);
  const integral = integratePower(spectrum);
  const power = hz.map((midHz) => {
    const [low, high] = bandEdges(midHz, fraction);
    return Math.max(integral(high) - integral(low), 0) / spectrum.hzPerBin;
  });
  return { hz, power };
}
