import {
  powerIntegral,
  powerUpTo,
  topHz,
  type PowerIntegral,
  type PowerSpectrum,
} from './power-spectrum';

/**
 * Frequencies spaced evenly on a log axis, `perOctave` to the octave, from lowHz up to highHz.
 * Throws RangeError unless 0 < lowHz ≤ highHz and perOctave > 0.
 */
export function logGrid(lowHz: number, highHz: number, perOctave: number): Float64Array {
  if (!(lowHz > 0 && lowHz <= highHz && highHz < Infinity && perOctave > 0)) {
    throw new RangeError(
      `a grid needs 0 < lowHz ≤ highHz and perOctave > 0, got ${lowHz}, ${highHz}, ${perOctave}`,
    );
  }
  const count = Math.floor(Math.log2(highHz / lowHz) * perOctave + 1e-9) + 1;
  const hz = new Float64Array(count);
  for (let n = 0; n < count; n++) hz[n] = lowHz * 2 ** (n / perOctave);
  return hz;
}

/**
 * Power mean over 1/fraction octave round each frequency, from f·2^(−1/2b) to f·2^(1/2b).
 * Bands narrower than a bin read the bin they lie in. Bands are cut off at half the sample rate;
 * throws RangeError for a frequency whose band lies wholly outside, or fraction ≤ 0.
 */
export function smoothPower(
  spectrum: PowerSpectrum,
  hz: ArrayLike<number>,
  fraction: number,
): Float64Array {
  if (!(fraction > 0)) throw new RangeError(`fraction must be positive, got ${fraction}`);
  return smoothOver(spectrum, hz, () => 1 / fraction);
}

/**
 * As smoothPower, over bands of octavesAt(f) octaves round each frequency f, above 0.
 */
export function smoothOver(
  spectrum: PowerSpectrum,
  hz: ArrayLike<number>,
  octavesAt: (hz: number) => number,
): Float64Array {
  const integral = powerIntegral(spectrum);
  const means = new Float64Array(hz.length);
  for (let k = 0; k < means.length; k++) {
    const centre = hz[k] ?? 0;
    means[k] = meanRound(integral, centre, octavesAt(centre));
  }
  return means;
}

function meanRound(integral: PowerIntegral, centre: number, octaves: number): number {
  const top = topHz(integral);
  const half = 2 ** (octaves / 2);
  const low = centre / half;
  const high = Math.min(centre * half, top);
  if (!(low > 0 && low < high)) {
    throw new RangeError(`frequencies must lie between 0 and ${top} Hz, got ${centre}`);
  }
  return Math.max((powerUpTo(integral, high) - powerUpTo(integral, low)) / (high - low), 0);
}
