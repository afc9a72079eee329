import { LEVEL_VARIANCE } from './level-variance';

const KNOTS_HZ = [15, 18, 22, 28, 35, 45, 56, 70, 90, 112, 140, 180, 500];
/** At a woofer's cone, as loud as a point 2 to 6 cm away: mean and spread of what the room adds. */
const GAIN_DB = [0.1, 0.3, 0.5, 0.65, 0.65, 0.35, 0.25, 0.35, 0.25, 0.3, 0.3, 0.2, 0];
const SPREAD_DB = [0.5, 0.5, 0.5, 0.8, 0.9, 0.9, 0.8, 0.7, 0.7, 0.7, 0.7, 0.6, 0.4];
const MIDDLE_OCTAVE = 7.6;

/** Mean of what the room adds close to the speaker, dB. Own simulation, see tests/accuracy. */
export function closeMeanDb(hz: number): number {
  return between(GAIN_DB, hz);
}

/**
 * Covariance of what is heard close to the speaker less its own response, over bands, dB², n × n in
 * rows. Room modes are a Gaussian process with a correlation length ℓ² = 6² + 0.05²·fi·fj Hz²;
 * beside it: slow ripple of the speaker, tilt, free level, doubt about the gain of the room.
 */
export function closeCovariance(hz: Float64Array): Float64Array {
  const n = hz.length;
  const covariance = new Float64Array(n * n);
  const spread = hz.map((f) => between(SPREAD_DB, f));
  const gain = hz.map((f) => between(GAIN_DB, f));
  const octave = hz.map((f) => Math.log2(f) - MIDDLE_OCTAVE);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [f, g, x, y] = [hz[i] ?? 0, hz[j] ?? 0, octave[i] ?? 0, octave[j] ?? 0];
      const length2 = 6 ** 2 + 0.05 ** 2 * f * g;
      const modes = 0.9 * Math.exp(-((f - g) ** 2) / length2) + 0.1 * Math.exp(-Math.abs(x - y));
      const c =
        (spread[i] ?? 0) * (spread[j] ?? 0) * modes +
        0.7 ** 2 * Math.exp(-0.5 * ((x - y) / 0.5) ** 2) +
        (i === j ? 0.2 : 0) +
        LEVEL_VARIANCE +
        0.35 ** 2 * x * y +
        (gain[i] ?? 0) * (gain[j] ?? 0);
      covariance[i * n + j] = c;
      covariance[j * n + i] = c;
    }
  }
  return covariance;
}

/** Linear between knots in log frequency, level beyond them. */
function between(values: readonly number[], hz: number): number {
  const last = KNOTS_HZ.length - 1;
  const x = Math.log(Math.min(Math.max(hz, KNOTS_HZ[0] ?? 0), KNOTS_HZ[last] ?? 0));
  let i = 0;
  while (i < last - 1 && x > Math.log(KNOTS_HZ[i + 1] ?? 0)) i++;
  const low = Math.log(KNOTS_HZ[i] ?? 1);
  const high = Math.log(KNOTS_HZ[i + 1] ?? 1);
  const share = (x - low) / (high - low);
  return (values[i] ?? 0) * (1 - share) + (values[i + 1] ?? 0) * share;
}
