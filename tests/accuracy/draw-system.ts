import { drawRoom, drawSeats, type RoomPreset } from '../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../dsp/room/draw-speaker';
import { ceilingPoint, placeAround } from '../../dsp/room/place';
import type { Point } from '../../dsp/room/point';
import type { Room } from '../../dsp/room/room';
import { seededRandom } from '../../dsp/signal/random';
import type { PracticeSpeaker, PracticeSystem } from '../../src/rig/practice-system';
import type { Channel, Layout } from '../../src/system/channel';

/**
 * A system in a drawn room, its speakers drawn one by one (f3 20 to 120 Hz, subs 20 to 30 Hz, a
 * third of the mains inverted) at random distances, surrounds up to 60° off their axis, front
 * heights bounced in every other room; a clock 30 to 150 ppm off.
 */
export function drawSystem(layout: Layout, preset: RoomPreset, seed: number): PracticeSystem {
  const random = seededRandom(seed + 0.3);
  const room = { ...drawRoom(seed, preset), celsius: 20 };
  const [seat] = drawSeats(room, seed, 1);
  if (!seat) throw new RangeError('a room has at least one seat');
  const bounce = seed % 2 === 0;
  const speakers = layout.channels.map((channel, index) => {
    const bounced = bounce && channel.group === 'front heights';
    return drawOne(channel, { room, seat, random, bounced, seed: 100 * seed + index });
  });
  const skew = (30 + 120 * random()) * (random() < 0.5 ? -1 : 1);
  return {
    room,
    microphone: seat,
    speakers,
    skewPpm: skew,
    latencySeconds: 0.1 + 0.3 * random(),
    noise: { pink: 0, hiss: 0 },
    sensitivityDb: -14,
    seed,
  };
}

interface Draw {
  readonly room: Room;
  readonly seat: Point;
  readonly random: () => number;
  readonly bounced: boolean;
  readonly seed: number;
}

function drawOne(channel: Channel, { room, seat, random, bounced, seed }: Draw): PracticeSpeaker {
  const isSub = channel.kind === 'sub';
  const kind = isSub ? 'sub' : bounced ? 'bounced' : 'main';
  const azimuth = channel.azimuthDegrees + 16 * (random() - 0.5);
  const distance = isSub ? 6 : (bounced ? 1.8 : 1.3) + 1.8 * random();
  const elevation = bounced ? 0 : channel.elevationDegrees;
  const place = placeAround(room, seat, azimuth, elevation, distance, 0.2);
  const z = isSub ? 0.25 : place.z + (bounced ? 0.2 : 0);
  const position = { ...place, z };
  const aim = bounced
    ? ceilingPoint(room, position, seat)
    : turned(position, seat, isFront(channel) ? 15 * random() : 20 + 40 * random());
  const inverted = !isSub && channel.label !== 'FL' && random() < 1 / 3;
  const speaker = { ...placeSpeaker(drawSpeaker(seed, { kind }), position, aim), inverted };
  return { channel: channel.label, speaker, bounced };
}

function isFront({ group }: Channel): boolean {
  return group === 'fronts' || group === 'centre';
}

/** A point off the line from a place to the seat by an angle, turned in the plan. */
function turned(from: Point, seat: Point, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  const [dx, dy] = [seat.x - from.x, seat.y - from.y];
  return {
    x: from.x + dx * Math.cos(angle) - dy * Math.sin(angle),
    y: from.y + dx * Math.sin(angle) + dy * Math.cos(angle),
    z: seat.z,
  };
}
