/** Octave bands that noise curves are given for, Hz. */
export const noiseCurveHz = [63, 125, 250, 500, 1000, 2000, 4000, 8000] as const;

/** How a noise stands to a family of curves. */
export interface NoiseRating {
  /** Number of the curve that the noise just touches; null above the highest one. */
  readonly rating: number | null;
  /** Whether the noise lies under the lowest curve, whose number is given then. */
  readonly isBelow: boolean;
  /** The octave band that decides, Hz. */
  readonly decidedByHz: number;
}

/** NC curves, dB in the bands of noiseCurveHz. Values of ANSI/ASA S12.2, from memory. */
const noiseCriteria: ReadonlyMap<number, readonly number[]> = new Map([
  [15, [47, 36, 29, 22, 17, 14, 12, 11]],
  [20, [51, 40, 33, 26, 22, 19, 17, 16]],
  [25, [54, 44, 37, 31, 27, 24, 22, 21]],
  [30, [57, 48, 41, 35, 31, 29, 28, 27]],
  [35, [60, 52, 45, 40, 36, 34, 33, 32]],
  [40, [64, 56, 50, 45, 41, 39, 38, 37]],
  [45, [67, 60, 54, 49, 46, 44, 43, 42]],
  [50, [71, 64, 58, 54, 51, 49, 48, 47]],
  [55, [74, 67, 62, 58, 56, 54, 53, 52]],
  [60, [77, 71, 67, 63, 61, 59, 58, 57]],
  [65, [80, 75, 71, 68, 66, 64, 63, 62]],
]);

/** NR curves are L = a + b·NR; constants of ISO 1996 (1971), from memory, bands of noiseCurveHz. */
const noiseRatingA = [35.5, 22, 12, 4.8, 0, -3.5, -6.1, -8] as const;
const noiseRatingB = [0.79, 0.87, 0.93, 0.974, 1, 1.015, 1.025, 1.03] as const;
const noiseRatingRange = [0, 130] as const;

/**
 * NC rating of octave-band sound pressure levels, dB re 20 µPa in the bands of noiseCurveHz, by the
 * tangent method: the lowest curve that no band exceeds, linear between the curves.
 * Throws RangeError unless there are 8 finite levels. Source: ANSI/ASA S12.2, from memory.
 */
export function rateNoiseCriterion(levelsDb: readonly number[]): NoiseRating {
  checkLevels(levelsDb);
  const numbers = [...noiseCriteria.keys()];
  return decide(levelsDb, numbers[0] ?? 0, numbers.at(-1) ?? 0, (levelDb, band) => {
    const curve = numbers.map((number) => noiseCriteria.get(number)?.[band] ?? 0);
    const above = curve.findIndex((value) => value >= levelDb);
    if (above <= 0) return above === 0 ? -Infinity : Infinity;
    const [low, high] = [curve[above - 1] ?? 0, curve[above] ?? 0];
    const start = numbers[above - 1] ?? 0;
    return start + (((numbers[above] ?? 0) - start) * (levelDb - low)) / (high - low);
  });
}

/**
 * NR of octave-band sound pressure levels, dB re 20 µPa in the bands of noiseCurveHz: the largest
 * (L − a)/b, not below 0. Throws RangeError unless there are 8 finite levels.
 * Source: ISO 1996 (1971), from memory.
 */
export function rateNoise(levelsDb: readonly number[]): NoiseRating {
  checkLevels(levelsDb);
  const [low, high] = noiseRatingRange;
  return decide(levelsDb, low, high, (levelDb, band) => {
    return (levelDb - (noiseRatingA[band] ?? 0)) / (noiseRatingB[band] ?? 1);
  });
}

function decide(
  levelsDb: readonly number[],
  lowest: number,
  highest: number,
  numberOf: (levelDb: number, band: number) => number,
): NoiseRating {
  const numbers = levelsDb.map(numberOf);
  const top = Math.max(...numbers);
  // Under all curves no band decides: the one that comes nearest is told.
  const band = top === -Infinity ? nearest(levelsDb) : numbers.indexOf(top);
  return {
    rating: top > highest ? null : Math.max(top, lowest),
    isBelow: top < lowest,
    decidedByHz: noiseCurveHz[band] ?? 0,
  };
}

function nearest(levelsDb: readonly number[]): number {
  const [lowest = []] = noiseCriteria.values();
  const over = levelsDb.map((levelDb, band) => levelDb - (lowest[band] ?? 0));
  return over.indexOf(Math.max(...over));
}

function checkLevels(levelsDb: readonly number[]): void {
  if (levelsDb.length !== noiseCurveHz.length || !levelsDb.every(Number.isFinite)) {
    throw new RangeError(
      `noise curves need ${noiseCurveHz.length} levels, got ${String(levelsDb)}`,
    );
  }
}
