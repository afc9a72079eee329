import type { Transfer } from '../bass/transfer';
import {
  BAND_COUNT,
  BANDS_PER_OCTAVE,
  LOWEST_BAND_HZ,
  marginsDb,
  referencePower,
  rolloffBandHz,
  type RolloffBands,
} from './rolloff-bands';

/** What a microphone hears close to one opening of a box. */
export interface CloseOpening {
  /** On bassGrid(); both openings at one gain and from one moment on. */
  readonly transfer: Transfer;
  /** Power of the noise per band of 1/12 octave re the 180 to 500 Hz mean of the transfer. */
  readonly noisePower: ArrayLike<number>;
}

/**
 * What an opening is heard with at the other's place re its own, as radius over four times the way
 * (full space), for a cone: two and a half of its radii from the port. Common build, no source.
 */
const across = 1 / (4 * 2.5);

/** Points of bassGrid() per band. */
const pointsPerBand = 48 / BANDS_PER_OCTAVE;

/**
 * Bass of a whole vented box in bands, from its cone and its port heard close by, for fitRolloff
 * with `place: 'close'`. Pressure in front of an opening goes as its volume velocity over its
 * radius, so the port counts by its diameter over the cone's, `portShare` (0 … 2]: the root of the
 * areas; several ports alike count by their number times that. What one opening sends to the other's place is taken off as it is at a usual distance.
 * Throws RangeError for another share, or transfers that are not on bassGrid() (15 to 480 Hz, 48
 * per octave). Source: Keele, JAES 1974 (from memory).
 */
export function coneAndPort(
  cone: CloseOpening,
  port: CloseOpening,
  portShare: number,
): RolloffBands {
  if (!(portShare > 0 && portShare <= 2)) {
    throw new RangeError(`portShare must lie in 0 … 2, got ${portShare}`);
  }
  const points = pointsPerBand * (BAND_COUNT - 1) + 1;
  for (const { transfer } of [cone, port]) {
    if (transfer.re.length !== points || transfer.im.length !== points) {
      throw new RangeError(`transfer must hold ${points} points, got ${transfer.re.length}`);
    }
  }
  const share = (portShare * (1 - across)) / (1 - across * portShare);
  const sum = {
    re: cone.transfer.re.map((value, n) => value + share * (port.transfer.re[n] ?? 0)),
    im: cone.transfer.im.map((value, n) => value + share * (port.transfer.im[n] ?? 0)),
  };
  const hz = Float64Array.from({ length: BAND_COUNT }, (_, k) => rolloffBandHz(k));
  const noise = [cone, port].map(({ transfer, noisePower }) => {
    const reference = referencePower(hz, bandPowers(transfer), new Float64Array(BAND_COUNT));
    return hz.map((_, k) => reference * (noisePower[k] ?? 0));
  });
  const heard = bandPowers(sum);
  const hiss = hz.map((_, k) => (noise[0]?.[k] ?? 0) + share ** 2 * (noise[1]?.[k] ?? 0));
  const whole = referencePower(hz, heard, hiss);
  const power = heard.map((value, k) => (value - (hiss[k] ?? 0)) / whole);
  const noisePower = hiss.map((value) => value / whole);
  return {
    hz,
    power,
    noisePower,
    lines: hz.map((_, k) => Math.max(1, LOWEST_BAND_HZ * 2 ** (k / BANDS_PER_OCTAVE) * widthShare)),
    marginDb: marginsDb(power, noisePower),
    early: [],
  };
}

/** Width of a band re its midpoint, times the second that a response is long. */
const widthShare = 2 ** (0.5 / BANDS_PER_OCTAVE) - 2 ** (-0.5 / BANDS_PER_OCTAVE);

/** Mean of |H|² over each band; the points on its edges count half. */
function bandPowers({ re, im }: Transfer): Float64Array {
  const reach = pointsPerBand / 2;
  return Float64Array.from({ length: BAND_COUNT }, (_, k) => {
    let [sum, weights] = [0, 0];
    for (let away = -reach; away <= reach; away++) {
      const n = pointsPerBand * k + away;
      if (n < 0 || n >= re.length) continue;
      const weight = Math.abs(away) === reach ? 0.5 : 1;
      sum += weight * ((re[n] ?? 0) ** 2 + (im[n] ?? 0) ** 2);
      weights += weight;
    }
    return sum / weights;
  });
}
