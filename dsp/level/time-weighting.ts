export type TimeWeighting = 'fast' | 'slow';

/** Time constants, seconds. Source: IEC 61672-1:2013, 3.8. */
export const timeConstants: Readonly<Record<TimeWeighting, number>> = { fast: 0.125, slow: 1 };

/**
 * Exponential mean of the square, as it comes: each call takes the next stretch of (frequency
 * weighted) samples and gives the mean square at its end, starting from silence. Levels fall by
 * 34.7 dB/s (fast) or 4.34 dB/s (slow) once sound stops. A sample that is not finite counts as
 * silence. Throws RangeError unless sampleRate is positive. Source: IEC 61672-1:2013, 3.8 and 5.8.
 */
export function createTimeWeighting(
  time: TimeWeighting,
  sampleRate: number,
): (samples: ArrayLike<number>) => number {
  if (!(sampleRate > 0 && sampleRate < Infinity)) {
    throw new RangeError(`sampleRate must be positive, got ${sampleRate}`);
  }
  const share = -Math.expm1(-1 / (timeConstants[time] * sampleRate));
  let power = 0;
  return (samples) => {
    for (let n = 0; n < samples.length; n++) {
      const x = samples[n] ?? 0;
      if (Number.isFinite(x)) power += share * (x * x - power);
      else power -= share * power;
    }
    return power;
  };
}
