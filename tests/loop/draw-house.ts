import { gaussian, seededRandom } from '../../dsp/signal/random';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import type { RoomSpec, SpeakerSpec } from './room/room-spec';

export type Point = readonly [number, number, number];

/** A living room of the loop with a layout in it. */
export interface House {
  /** Without speakers of its own and without a place for the microphone. */
  readonly room: Omit<RoomSpec, 'microphone'>;
  readonly seat: Point;
  readonly speakers: ReadonlyMap<ChannelLabel, SpeakerSpec>;
  /** The random numbers go on for whatever else is drawn. */
  readonly between: (low: number, high: number) => number;
  readonly normal: () => number;
}

/**
 * Draws a room and places the speakers of the layout in it as the standards have them, give or take
 * what furniture allows; the same seed is the same house. Speakers are on outputs in their order.
 */
export function drawHouse(layout: Layout, seed: number): House {
  const random = seededRandom(seed + 0.6875);
  const normal = gaussian(random);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const size: Point = [between(4.4, 6.4), between(3.6, 5), between(2.4, 2.8)];
  const seat: Point = [size[0] * between(0.36, 0.46), size[1] / 2 + 0.1 * normal(), 1.1];
  const far = between(2, 2.9);
  const speakers = new Map<ChannelLabel, SpeakerSpec>();
  for (const [output, channel] of layout.channels.entries()) {
    const azimuth = channel.azimuthDegrees + 4 * normal();
    const distance = far * between(0.9, 1.1);
    const position = placeOf(channel, azimuth, distance, seat, size);
    speakers.set(channel.label, { output, position, ...modelOf(channel, between) });
  }
  const room = {
    sampleRate: 48_000,
    size,
    reflectance: [between(0.75, 0.88), between(0.5, 0.7)] as const,
    celsius: 20,
    gainDb: -8,
    noiseDb: -72,
    skewPpm: 0,
    seed,
    speakers: [],
  };
  return { room, seat, speakers, between, normal };
}

/** Along the ray from the seat, no farther than the walls let it. */
function placeOf(
  { kind, elevationDegrees }: Channel,
  azimuthDegrees: number,
  distance: number,
  seat: Point,
  size: Point,
): Point {
  const azimuth = (azimuthDegrees * Math.PI) / 180;
  const elevation = (elevationDegrees * Math.PI) / 180;
  const ray: Point = [
    Math.cos(azimuth) * Math.cos(elevation),
    Math.sin(azimuth) * Math.cos(elevation),
    Math.sin(elevation),
  ];
  const margin = 0.2;
  const reach = ray.map((part, axis) => {
    const [from = 0, wall = 0] = [seat[axis], size[axis]];
    if (Math.abs(part) < 1e-6) return Infinity;
    return (part > 0 ? wall - margin - from : from - margin) / Math.abs(part);
  });
  const metres = Math.min(kind === 'sub' ? 9 : distance, ...reach);
  const [x, y, z] = ray.map((part, axis) => (seat[axis] ?? 0) + metres * part);
  return [x ?? 0, y ?? 0, kind === 'sub' ? 0.25 : (z ?? 0)];
}

/** Small speakers of three kinds, each a little louder or softer than its brothers; late subs. */
function modelOf({ kind }: Channel, between: (low: number, high: number) => number) {
  const gainDb = between(-1.5, 1.5);
  if (kind === 'sub') {
    const box = { kind: 'closed', resonanceHz: between(24, 32), q: 0.75 } as const;
    return { box, lowPassHz: 150, delaySeconds: between(0.001, 0.006), gainDb };
  }
  const box =
    between(0, 1) < 0.4
      ? ({ kind: 'vented', tuningHz: between(55, 100) } as const)
      : ({ kind: 'closed', resonanceHz: between(80, 140), q: between(0.7, 1) } as const);
  return { box, gainDb };
}
