import type { BandTiles } from './band-tiles';
import type { Disturbance } from './disturbance';
import type { EventShape } from './event-shape';

/** What kinds are told apart by. */
export interface EventTraits {
  /** Seconds that hold 80 % of it. */
  readonly seconds: number;
  readonly spanSeconds: number;
  /** Share of its power below 110 Hz, and from 140 to 4500 Hz of what lies above. */
  readonly bassShare: number;
  readonly speechShare: number;
  /** Ups and downs of its level by 6 dB or more. */
  readonly syllables: number;
  /** Octaves in which it was really heard, its density within 20 dB of the highest. */
  readonly octaves: number;
}

const bassHz = 110;
const speechHz = [140, 4500] as const;
const swingDb = 6;
const smoothSeconds = 0.05;

export function eventTraits(
  { course, spectrum, span }: EventShape,
  seen: Float64Array,
  tiles: BandTiles,
  frameSeconds: number,
): EventTraits {
  let bass = 0;
  let speech = 0;
  let upper = 0;
  for (const [b, { midHz }] of tiles.bands.entries()) {
    const value = spectrum[b] ?? 0;
    if (midHz < bassHz) bass += value;
    else upper += value;
    if (midHz > speechHz[0] && midHz < speechHz[1]) speech += value;
  }
  const heard = tiles.bands.map((_, b) => {
    for (let n = span.from; n < span.to; n++) if (seen[b * tiles.frames + n]) return true;
    return false;
  });
  const densities = tiles.bands.map(({ midHz }, b) => (heard[b] ? (spectrum[b] ?? 0) / midHz : 0));
  const most = Math.max(...densities);
  return {
    seconds: coreFrames(course) * frameSeconds,
    spanSeconds: course.length * frameSeconds,
    bassShare: bass / Math.max(bass + upper, 1e-300),
    speechShare: speech / Math.max(upper, 1e-300),
    syllables: countSwings(course, Math.round(smoothSeconds / frameSeconds)),
    octaves: densities.filter((value) => value > 0.01 * most).length / 3,
  };
}

export function nameEvent(traits: EventTraits, humming: boolean): Disturbance['kind'] {
  const { seconds, spanSeconds, bassShare, speechShare, syllables, octaves } = traits;
  if (humming && spanSeconds > 0.8) return 'hum';
  if (bassShare < 0.7 && speechShare > 0.6 && syllables >= 2 && spanSeconds > 0.5) return 'voice';
  if (bassShare > 0.8 && (seconds >= 0.35 || octaves < 2)) return 'rumble';
  if (seconds < 0.35) return 'bang';
  return 'noisy';
}

/** Fewest frames that hold 80 % of the course. */
function coreFrames(course: Float64Array): number {
  const sorted = course.slice().sort().reverse();
  const whole = sorted.reduce((sum, value) => sum + value, 0);
  let sum = 0;
  return sorted.findIndex((value) => (sum += value) >= 0.8 * whole) + 1;
}

function countSwings(course: Float64Array, width: number): number {
  let high = -Infinity;
  let low = Infinity;
  let rising = true;
  let swings = 0;
  const most = course.reduce((max, value) => Math.max(max, value), 0);
  for (let n = 0; n + width <= course.length; n += Math.max(1, width >> 1)) {
    let sum = 0;
    for (let m = 0; m < width; m++) sum += course[n + m] ?? 0;
    const db = 10 * Math.log10(Math.max(sum / width, 1e-3 * most, 1e-300));
    if (rising) {
      high = Math.max(high, db);
      if (db < high - swingDb) {
        swings++;
        rising = false;
        low = db;
      }
    } else {
      low = Math.min(low, db);
      if (db > low + swingDb) {
        rising = true;
        high = db;
      }
    }
  }
  return swings;
}
