/** What a fit is told about the place of the microphone. */
export interface Place {
  readonly place: 'room' | 'close';
  /** Positions averaged, at least 1. */
  readonly positions: number;
  /** Speakers of one model averaged, at least 1. */
  readonly sameModel: number;
  /** Time of decay by 60 dB from 180 to 500 Hz; null when not known. */
  readonly decaySeconds: number | null;
}

const KNOTS_HZ = [15, 18, 22, 28, 35, 45, 56, 70, 90, 112, 140, 180, 500];
const ROOM_GAIN_DB = [12, 9.3, 6.8, 7.8, 6.8, 2.4, 0.9, 0.7, 0.7, -0.8, 0.6, 0, 0];
const SPREAD_ONE_DB = [5, 6, 7.4, 8.6, 7.4, 6.5, 6.8, 7, 6.5, 5.6, 4.5, 4.3, 3.9];
const SPREAD_EIGHT_DB = [5, 5.6, 7, 8.2, 6.6, 5.2, 5.2, 5.5, 5.3, 4.4, 3.4, 2.8, 2.8];
/** At a woofer's cone, as loud as a point 2 to 6 cm away: mean and spread of what the room adds. */
const CLOSE_GAIN_DB = [0.1, 0.3, 0.5, 0.65, 0.65, 0.35, 0.25, 0.35, 0.25, 0.3, 0.3, 0.2, 0];
const CLOSE_SPREAD_DB = [0.5, 0.5, 0.5, 0.8, 0.9, 0.9, 0.8, 0.7, 0.7, 0.7, 0.7, 0.6, 0.4];
const SAME_MODEL = [1, 0.85, 0.75, 0.7, 0.65];
const TRUST_IN_GAIN = 0.6;
const DB_PER_DOUBLING = [2, 2, 2, 2, 1.7, 1.4, 1.1, 0.8, 0.5, 0.3, 0.15, 0, 0];
const USUAL_DECAY = 0.35;
const MOST_DOUBLINGS = 2;
const MIDDLE_OCTAVE = 7.6;

/** Variance of the level between microphone and passband, dB²: left free. */
export const LEVEL_VARIANCE = 20 ** 2;

/**
 * Mean of in-room minus own response, dB. Below the first modes the sound is that of a compressed
 * volume, however live the room; the level it is compared with, at 180 to 500 Hz, rises with the
 * decay: 2 dB per doubling. Own simulation, see tests/accuracy.
 */
export function residualMeanDb(hz: number, place: Place): number {
  if (place.place === 'close') return between(CLOSE_GAIN_DB, hz);
  const doublings = Math.log2((place.decaySeconds ?? USUAL_DECAY) / USUAL_DECAY);
  const livelier = Math.min(Math.max(doublings, -MOST_DOUBLINGS), MOST_DOUBLINGS);
  return TRUST_IN_GAIN * between(ROOM_GAIN_DB, hz) - livelier * between(DB_PER_DOUBLING, hz);
}

/**
 * Covariance of in-room minus own response over bands, dB², n × n in rows. Room modes are a
 * Gaussian process with a correlation length ℓ² = 6² + 0.05²·fi·fj Hz²; beside it: slow ripple of
 * the speaker, tilt, free level, doubt about the room gain. Own simulation, see tests/accuracy.
 */
export function residualCovariance(hz: Float64Array, place: Place): Float64Array {
  const n = hz.length;
  const covariance = new Float64Array(n * n);
  const entry = place.place === 'close' ? closeCovariance(hz) : roomCovariance(hz, place);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const c = entry(i, j);
      covariance[i * n + j] = c;
      covariance[j * n + i] = c;
    }
  }
  return covariance;
}

/** Standard deviation of a room's response about its mean, dB, per band. */
export function residualSpread(hz: Float64Array, place: Place): Float64Array {
  return hz.map((f) => roomSpreadDb(f, place));
}

type Entry = (i: number, j: number) => number;

function roomCovariance(hz: Float64Array, place: Place): Entry {
  const spread = residualSpread(hz, place);
  const gain = hz.map((f) => between(ROOM_GAIN_DB, f));
  const octave = hz.map((f) => Math.log2(f) - MIDDLE_OCTAVE);
  const modes = modalCorrelation(hz, octave);
  return (i, j) =>
    (spread[i] ?? 0) * (spread[j] ?? 0) * modes(i, j) +
    slowRipple(1, octave, i, j) +
    (i === j ? 0.5 ** 2 : 0) +
    LEVEL_VARIANCE +
    0.4 ** 2 * (octave[i] ?? 0) * (octave[j] ?? 0) +
    0.25 * (gain[i] ?? 0) * (gain[j] ?? 0);
}

function closeCovariance(hz: Float64Array): Entry {
  const spread = hz.map((f) => between(CLOSE_SPREAD_DB, f));
  const gain = hz.map((f) => between(CLOSE_GAIN_DB, f));
  const octave = hz.map((f) => Math.log2(f) - MIDDLE_OCTAVE);
  const modes = modalCorrelation(hz, octave);
  return (i, j) =>
    (spread[i] ?? 0) * (spread[j] ?? 0) * modes(i, j) +
    slowRipple(0.7, octave, i, j) +
    (i === j ? 0.2 : 0) +
    LEVEL_VARIANCE +
    0.35 ** 2 * (octave[i] ?? 0) * (octave[j] ?? 0) +
    (gain[i] ?? 0) * (gain[j] ?? 0);
}

function modalCorrelation(hz: Float64Array, octave: Float64Array): Entry {
  return (i, j) => {
    const f = hz[i] ?? 0;
    const g = hz[j] ?? 0;
    const length2 = 6 ** 2 + 0.05 ** 2 * f * g;
    const apart = Math.abs((octave[i] ?? 0) - (octave[j] ?? 0));
    return 0.9 * Math.exp(-((f - g) ** 2) / length2) + 0.1 * Math.exp(-apart);
  };
}

function slowRipple(db: number, octave: Float64Array, i: number, j: number): number {
  return db * db * Math.exp(-0.5 * (((octave[i] ?? 0) - (octave[j] ?? 0)) / 0.5) ** 2);
}

/** Spread of a room's response about its mean, dB: what averaging leaves over plus 1/n of the rest. */
function roomSpreadDb(hz: number, { positions, sameModel }: Place): number {
  const one = between(SPREAD_ONE_DB, hz) ** 2;
  const eight = between(SPREAD_EIGHT_DB, hz) ** 2;
  const lasting = (8 * eight - one) / 7;
  const alike = SAME_MODEL[Math.min(Math.round(sameModel), 5) - 1] ?? 1;
  return alike * Math.sqrt(lasting + (one - lasting) / positions);
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
