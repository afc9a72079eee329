export interface FitPoint {
  readonly x: number;
  readonly y: number;
  /** Standard deviation expected of y. */
  readonly deviation: number;
  /** Points of one group share an unknown offset; groups are numbered from 0. */
  readonly group: number;
}

export interface SlopeFit {
  readonly slope: number;
  /** Standard deviation of the slope; Infinity when no group holds two points. */
  readonly slopeDeviation: number;
  /** Times the deviation gives half the 90 % interval (Student's t). */
  readonly quantile: number;
  /** How many times larger the residuals are than the deviations said. */
  readonly scale: number;
}

/** The expected deviations count as much as so many residuals. */
const priorFreedom = 4;

/**
 * Weighted least squares of y = offset of the group + slope·x. The residuals and the expected
 * deviations together give the spread. Common practice.
 */
export function fitSlope(points: readonly FitPoint[]): SlopeFit {
  const groups = new Map<number, { weight: number; x: number; y: number }>();
  for (const { x, y, deviation, group } of points) {
    const weight = deviation ** -2;
    const sum = groups.get(group) ?? { weight: 0, x: 0, y: 0 };
    sum.weight += weight;
    sum.x += weight * x;
    sum.y += weight * y;
    groups.set(group, sum);
  }
  const centred = points.map(({ x, y, deviation, group }) => {
    const mean = groups.get(group) ?? { weight: 1, x: 0, y: 0 };
    return { x: x - mean.x / mean.weight, y: y - mean.y / mean.weight, weight: deviation ** -2 };
  });
  let xx = 0;
  let xy = 0;
  for (const { x, y, weight } of centred) {
    xx += weight * x * x;
    xy += weight * x * y;
  }
  const freedom = points.length - groups.size - 1;
  if (freedom < 0 || !(xx > 0)) {
    return { slope: 0, slopeDeviation: Infinity, quantile: 1.645, scale: 1 };
  }
  const slope = xy / xx;
  let misfit = 0;
  for (const { x, y, weight } of centred) misfit += weight * (y - slope * x) ** 2;
  const scale = Math.sqrt((priorFreedom + misfit) / (priorFreedom + freedom));
  return {
    slope,
    slopeDeviation: scale / Math.sqrt(xx),
    quantile: studentQuantile95(priorFreedom + freedom),
    scale,
  };
}

/** 95 % quantile of Student's t, 3 or more degrees. Source: Abramowitz and Stegun, 26.7.5. */
export function studentQuantile95(freedom: number): number {
  const z = 1.6448536;
  return (
    z +
    (z ** 3 + z) / (4 * freedom) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * freedom ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * freedom ** 3)
  );
}
