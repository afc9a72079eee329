/** Octave ratio of IEC 61260-1, G = 10^0.3, and its reference frequency. */
const octaveRatio = 10 ** 0.3;
const referenceHz = 1000;

/**
 * Exact midpoints in Hz of the 1/fraction-octave bands from lowHz to highHz, both included within
 * rounding: 1000·G^(x/b) for odd b, 1000·G^((2x + 1)/2b) for even b.
 * Throws RangeError unless 0 < lowHz ≤ highHz and fraction is whole and at least 1.
 * Source: IEC 61260-1:2014, 5.4.
 */
export function bandMidpoints(lowHz: number, highHz: number, fraction: number): Float64Array {
  checkFraction(fraction);
  if (!(lowHz > 0 && lowHz <= highHz && highHz < Infinity)) {
    throw new RangeError(`bands need 0 < lowHz ≤ highHz, got ${lowHz}, ${highHz}`);
  }
  const shift = fraction % 2 === 0 ? 0.5 : 0;
  const position = (hz: number): number =>
    (fraction * Math.log(hz / referenceHz)) / Math.log(octaveRatio) - shift;
  const first = Math.ceil(position(lowHz) - 1e-9);
  const last = Math.floor(position(highHz) + 1e-9);
  const count = Math.max(last - first + 1, 0);
  return Float64Array.from({ length: count }, (_, n) => {
    return referenceHz * octaveRatio ** ((first + n + shift) / fraction);
  });
}

/**
 * Lower and upper edge in Hz of the 1/fraction-octave band round `midHz`, midHz·G^(∓1/2b).
 * Throws RangeError unless midHz is positive and fraction whole. Source: IEC 61260-1:2014, 5.5.
 */
export function bandEdges(midHz: number, fraction: number): readonly [number, number] {
  checkFraction(fraction);
  if (!(midHz > 0 && midHz < Infinity)) {
    throw new RangeError(`midHz must be positive, got ${midHz}`);
  }
  const half = octaveRatio ** (1 / (2 * fraction));
  return [midHz / half, midHz * half];
}

function checkFraction(fraction: number): void {
  if (!Number.isInteger(fraction) || fraction < 1) {
    throw new RangeError(`fraction must be whole and at least 1, got ${fraction}`);
  }
}
