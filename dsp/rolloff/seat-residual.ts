import { EARLY_SECONDS } from './early-part';
import { rolloffBandHz } from './rolloff-bands';
import { LEVEL_VARIANCE } from './level-variance';
import { OF_PLACE } from './learnt/of-place';
import { OF_READING } from './learnt/of-reading';
import { OF_ROOM } from './learnt/of-room';
import { SEAT_MEAN_DB } from './learnt/seat-mean';
import { SEAT_BANDS, SEAT_STRIDE } from './seat-levels';

/** How much the readings of an average have in common. */
export interface Likeness {
  /** Share of all pairs of readings, a reading with itself among them, that are one reading. */
  readonly sameReading: number;
  /** The same of one loudspeaker. */
  readonly sameSpeaker: number;
}

/** The mix of rooms learnt from is wider than any kind of them: chosen on tuning rooms. */
const WIDEN = 0.85;
const MIDDLE_OCTAVE = 7.6;
/**
 * Doubt about how much a stiff room lifts the bass, dB: all of it up to the first, none from the
 * second, Hz; of the whole response and of the early parts.
 */
const STIFFNESS_DB = [2, 0.8, 1.5];
const STIFFNESS_HZ = [40, 120] as const;
/** Ripple of the speaker, dB, tilt, dB per octave, and what is left over, dB². */
const RIPPLE = 1;
const TILT = 0.4;
const ROUGH = 0.2;
/** Doubt about when the bass sets out against the first of the sound, seconds. */
const ONSET_SECONDS = 2e-3;
const DB_PER_NEPER = 20 / Math.LN10;

/** Mean of in-room minus own level at an entry, dB. */
export function seatMeanDb(entry: number): number {
  return SEAT_MEAN_DB[entry] ?? 0;
}

/** Covariances last asked for, newest last: the speakers of a take share one or two. */
const covariances = new Map<string, Float64Array>();
const keptCovariances = 4;

/**
 * Covariance of in-room minus own level over entries of seat-levels, dB², n × n in rows. What the
 * room does to every speaker alike, to one speaker at all seats, and to one speaker at one seat was
 * learnt from simulated rooms (tests/accuracy/learn-rooms); beside it the speaker's ripple and
 * tilt, a free level, and doubt about when the bass sets out.
 */
export function seatCovariance(entries: readonly number[], likeness: Likeness): Float64Array {
  const key = [likeness.sameReading, likeness.sameSpeaker, ...entries].join(' ');
  const covariance = covariances.get(key) ?? computeCovariance(entries, likeness);
  covariances.delete(key);
  covariances.set(key, covariance);
  for (const oldest of covariances.keys()) {
    if (covariances.size <= keptCovariances) break;
    covariances.delete(oldest);
  }
  return covariance.slice();
}

function computeCovariance(
  entries: readonly number[],
  { sameReading, sameSpeaker }: Likeness,
): Float64Array {
  const n = entries.length;
  const covariance = new Float64Array(n * n);
  const octave = entries.map(
    (entry) => Math.log2(rolloffBandHz((entry % SEAT_BANDS) * SEAT_STRIDE)) - MIDDLE_OCTAVE,
  );
  // A window e^(−t/τ) that opens δ late raises its level by δ/τ neper.
  const late = entries.map((entry) => {
    const seconds = EARLY_SECONDS[Math.floor(entry / SEAT_BANDS) - 1];
    return seconds === undefined ? 0 : (DB_PER_NEPER * ONSET_SECONDS) / seconds;
  });
  const lift = entries.map((entry) => stiffnessDb(entry));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const [a, b] = [entries[i] ?? 0, entries[j] ?? 0];
      const [x, y] = [octave[i] ?? 0, octave[j] ?? 0];
      const rooms =
        product(OF_ROOM, a, b) +
        sameSpeaker * product(OF_PLACE, a, b) +
        sameReading * product(OF_READING, a, b);
      const c =
        WIDEN * rooms +
        RIPPLE ** 2 * Math.exp(-0.5 * ((x - y) / 0.5) ** 2) +
        TILT ** 2 * x * y +
        LEVEL_VARIANCE +
        (late[i] ?? 0) * (late[j] ?? 0) +
        (lift[i] ?? 0) * (lift[j] ?? 0) +
        (i === j ? ROUGH : 0);
      covariance[i * n + j] = c;
      covariance[j * n + i] = c;
    }
  }
  return covariance;
}

function stiffnessDb(entry: number): number {
  const hz = rolloffBandHz((entry % SEAT_BANDS) * SEAT_STRIDE);
  const [all, none] = STIFFNESS_HZ;
  const share = Math.log(none / hz) / Math.log(none / all);
  return (STIFFNESS_DB[Math.floor(entry / SEAT_BANDS)] ?? 0) * Math.min(Math.max(share, 0), 1);
}

function product(factors: readonly (readonly number[])[], a: number, b: number): number {
  let sum = 0;
  for (const factor of factors) sum += (factor[a] ?? 0) * (factor[b] ?? 0);
  return sum;
}
