import { EARLY_SECONDS } from './early-part';
import { BAND_COUNT, type RolloffBands } from './rolloff-bands';

/** Bands averaged by power to each side: a room's dips are deep and narrow, their mean is not. */
export const SEAT_HALF_WIDTH = 3;
/** Every third band is looked at: its neighbours lie in its mean. */
export const SEAT_STRIDE = 3;
/** Bands looked at per window: 15 to 480 Hz, four to the octave. */
export const SEAT_BANDS = Math.floor((BAND_COUNT - 1) / SEAT_STRIDE) + 1;
/** Entries of the early parts. */
export const SEAT_EARLY = EARLY_SECONDS.length * SEAT_BANDS;
/** Entries in all: the whole response, then the early parts in the order of EARLY_SECONDS. */
export const SEAT_ENTRIES = SEAT_BANDS + SEAT_EARLY;

/** Level below which neither data nor models count, re the passband, as a power. */
export const SOFT_FLOOR = 1e-3;

/** Mean power over up to three bands to each side, at every third of 61 bands. */
export function seatMeans(power: Float64Array): Float64Array {
  const means = new Float64Array(SEAT_BANDS);
  for (let entry = 0; entry < SEAT_BANDS; entry++) {
    const [from, to] = seatRange(entry);
    let sum = 0;
    for (let k = from; k <= to; k++) sum += power[k] ?? 0;
    means[entry] = sum / (to - from + 1);
  }
  return means;
}

/** First and last band of an entry's mean; entries count on from window to window. */
export function seatRange(entry: number): readonly [number, number] {
  const middle = (entry % SEAT_BANDS) * SEAT_STRIDE;
  return [
    Math.max(0, middle - SEAT_HALF_WIDTH),
    Math.min(BAND_COUNT - 1, middle + SEAT_HALF_WIDTH),
  ];
}

/** Signal and noise power of all entries; NaN-free; early entries are zero where not known. */
export function seatPowers({ power, noisePower, early }: RolloffBands): {
  readonly signal: Float64Array;
  readonly noise: Float64Array;
} {
  const signal = new Float64Array(SEAT_ENTRIES);
  const noise = new Float64Array(SEAT_ENTRIES);
  [{ power, noisePower }, ...early].forEach((part, window) => {
    signal.set(seatMeans(part.power), window * SEAT_BANDS);
    noise.set(seatMeans(part.noisePower), window * SEAT_BANDS);
  });
  return { signal, noise };
}

/** Levels of all entries on the soft floor, dB re the 180 to 500 Hz level. */
export function seatLevelsDb(bands: RolloffBands): Float64Array {
  return seatPowers(bands).signal.map((p) => 10 * Math.log10(Math.max(p, 0) + SOFT_FLOOR));
}
