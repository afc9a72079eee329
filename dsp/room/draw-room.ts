import { seededRandom } from '../signal/random';
import { bandDecay } from './decay';
import type { Point } from './point';
import type { Room } from './room';

/**
 * Kinds of room. typical: domestic, T20 0.15 to 0.54 s at 1 kHz, stiff walls. live: the same sizes
 * with 0.5 to 1 s. leaky: typical, but light walls and openings lose the bass. large: 9 to 14 m.
 */
export type RoomPreset = 'typical' | 'live' | 'leaky' | 'large';

const mid = 5;
/** No wall absorbs less than this below 250 Hz: even stiff ones move, and doors leak. */
const leastBass = 0.08;
/** Energy absorption over 31 Hz … 16 kHz re 1 kHz, by kind of surface. Invented, plausible. */
const surfaces = {
  floor: [0.25, 0.27, 0.32, 0.4, 0.6, 1, 1.3, 1.5, 1.6, 1.6],
  panel: [0.75, 0.8, 0.82, 0.75, 0.9, 1, 1.05, 1.1, 1.15, 1.2],
  hard: [0.5, 0.52, 0.58, 0.7, 0.9, 1, 1.1, 1.3, 1.5, 1.7],
  soft: [0.35, 0.38, 0.48, 0.6, 0.9, 1, 1, 1, 1, 1],
} as const;

/**
 * A room of a kind; the same seed gives the same room. `given` is its size, else drawn too. Throws
 * RangeError for an unknown kind.
 */
export function drawRoom(seed: number, preset: RoomPreset = 'typical', given?: Point): Room {
  const random = seededRandom(seed);
  for (let i = 0; i < 8; i++) random();
  const drawn = drawSize(random, preset);
  const size = given ?? drawn;
  const celsius = 17 + 8 * random();
  const seconds = drawSeconds(random, preset);
  const shapes = drawShapes(random, preset);
  const least = leastBass + 0.04 * random();
  const of = (scale: number): Room => {
    const absorption = shapes.map((wall) =>
      wall.map((value, band) => Math.min(0.92, Math.max(scale * value, band < 3 ? least : 0.01))),
    );
    return { size, celsius, absorption, seed };
  };
  const low = preset === 'leaky' ? drawLeak(random) : null;
  const room = of(scaleFor(seconds, of));
  if (low === null) return room;
  const absorption = room.absorption.map((wall) =>
    wall.map((value, band) => Math.max(value, low[band] ?? 0)),
  );
  return { ...room, absorption };
}

/** Places for a microphone: a main seat in the back half and `count − 1` others around it. */
export function drawSeats(room: Room, seed: number, count: number): Point[] {
  const random = seededRandom(seed + 0.5);
  const { x, y } = room.size;
  const main = {
    x: x * (0.5 + 0.24 * (random() - 0.5)),
    y: Math.max(1, y * (0.18 + 0.26 * random())),
    z: 1 + 0.25 * random(),
  };
  const seats = [main];
  while (seats.length < count) {
    const seat = {
      x: main.x + 1.8 * (random() - 0.5),
      y: main.y + 1.2 * (random() - 0.5),
      z: main.z + 0.3 * (random() - 0.5),
    };
    if (seat.x > 0.4 && seat.x < x - 0.4 && seat.y > 0.4 && seat.y < y - 0.4) seats.push(seat);
  }
  return seats;
}

function drawSize(random: () => number, preset: RoomPreset): Point {
  const between = (low: number, high: number): number => low + (high - low) * random();
  if (preset === 'large') return { x: between(6, 9), y: between(9, 14), z: between(3.2, 4.5) };
  const long = between(3.8, 6.5);
  const short = between(3, 5.2);
  const z = between(2.3, 3);
  return random() < 0.5 ? { x: long, y: short, z } : { x: short, y: long, z };
}

function drawSeconds(random: () => number, preset: RoomPreset): number {
  const [low, high] = preset === 'live' ? [0.5, 1] : preset === 'large' ? [0.3, 0.7] : [0.15, 0.54];
  return low * (high / low) ** random();
}

function drawShapes(random: () => number, preset: RoomPreset): number[][] {
  if (!['typical', 'live', 'leaky', 'large'].includes(preset)) {
    throw new RangeError(`preset must be typical, live, leaky or large, got ${preset}`);
  }
  const kinds = ['panel', 'hard', 'soft'] as const;
  const wall = (shape: readonly number[]): number[] => {
    const amount = 0.5 + random();
    return shape.map((value) => value * amount * (0.85 + 0.3 * random()));
  };
  const side = (): number[] => wall(surfaces[kinds[Math.floor(3 * random())] ?? 'hard']);
  return [side(), side(), side(), side(), wall(surfaces.floor), wall(surfaces.hard)];
}

/** Least absorption of every wall below 250 Hz. */
function drawLeak(random: () => number): number[] {
  const at31 = 0.2 + 0.3 * random();
  return [at31, at31 * 0.8, at31 * 0.55, at31 * 0.3];
}

/** The scale that gives the wished T20 at 1 kHz, by bisection on its logarithm. */
function scaleFor(seconds: number, of: (scale: number) => Room): number {
  let low = 0.005;
  let high = 2;
  for (let i = 0; i < 20; i++) {
    const middle = Math.sqrt(low * high);
    if (bandDecay(of(middle), mid).reverberationSeconds > seconds) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
