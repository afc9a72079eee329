import { placeSpeaker } from '../../dsp/room/draw-speaker';
import { ceilingPoint, placeAround } from '../../dsp/room/place';
import type { Point } from '../../dsp/room/point';
import type { Room } from '../../dsp/room/room';
import { seededRandom } from '../../dsp/signal/random';
import type { Channel, ChannelLabel, GroupId, Layout } from '../system/channel';
import { practiceModels } from './practice-models';
import type { PracticeSpeaker } from './practice-system';

/** How far from the seat the speakers of a group stand, metres, when the room lets them: subs go to the walls. */
const distances: Readonly<Record<GroupId, readonly [number, number]>> = {
  fronts: [2.4, 2.4],
  centre: [2.1, 2.35],
  wides: [1.9, 2.4],
  sides: [1.5, 2.2],
  backs: [1.3, 2.1],
  'front heights': [1.9, 2.5],
  'middle heights': [1.4, 2],
  'back heights': [1.5, 2.2],
  subs: [6, 6],
};

/** The bed speakers that bounced heights stand on, first choice first. */
const stands: Readonly<Partial<Record<ChannelLabel, readonly ChannelLabel[]>>> = {
  TpFL: ['FL'],
  TpFR: ['FR'],
  TpSiL: ['SiL', 'FL'],
  TpSiR: ['SiR', 'FR'],
  TpBL: ['BL', 'SiL'],
  TpBR: ['BR', 'SiR'],
};

/** Stands every speaker of the layout in the room, seen from the microphone at the seat. */
export function placePracticeSpeakers(
  layout: Layout,
  room: Room,
  seat: Point,
  seed: number,
): PracticeSpeaker[] {
  const random = seededRandom(seed + 0.375);
  const frontHeightsBounce = random() < 0.35;
  const models = practiceModels(layout, seed, frontHeightsBounce);
  const places = new Map<ChannelLabel, Point>();
  const groupDistance = new Map<GroupId, number>();
  for (const channel of layout.channels) {
    const [near, far] = distances[channel.group];
    const first = groupDistance.get(channel.group) ?? near + (far - near) * random();
    groupDistance.set(channel.group, first);
    const aside = channel.label === 'FL' ? 0 : 0.12 * (random() - 0.5);
    places.set(channel.label, placeOf(channel, room, seat, first + aside));
  }
  return layout.channels.map((channel) => {
    const bounced = channel.group === 'front heights' && frontHeightsBounce;
    const position = bounced ? onTopOf(channel.label, places) : placeIn(places, channel.label);
    const model = models(channel);
    const aim = bounced ? ceilingPoint(room, position, seat) : aimOf(channel, position, seat);
    return { channel: channel.label, speaker: placeSpeaker(model, position, aim), bounced };
  });
}

function placeOf(channel: Channel, room: Room, seat: Point, distance: number): Point {
  const { azimuthDegrees, elevationDegrees } = channel;
  const margin = channel.kind === 'height' ? 0.1 : channel.kind === 'sub' ? 0.3 : 0.2;
  const at = placeAround(room, seat, azimuthDegrees, elevationDegrees, distance, margin);
  return channel.kind === 'sub' ? { ...at, z: 0.25 } : at;
}

/** Fronts point at the seat, surrounds past it into the room, heights half down. */
function aimOf(channel: Channel, position: Point, seat: Point): Point {
  if (channel.group === 'fronts' || channel.group === 'centre') return seat;
  if (channel.kind === 'height') return { x: seat.x, y: (position.y + seat.y) / 2, z: 0.3 };
  return { x: seat.x, y: position.y, z: seat.z + 0.01 };
}

function onTopOf(label: ChannelLabel, places: ReadonlyMap<ChannelLabel, Point>): Point {
  for (const stand of stands[label] ?? []) {
    const below = places.get(stand);
    if (below) return { ...below, z: below.z + 0.25 };
  }
  return placeIn(places, label);
}

function placeIn(places: ReadonlyMap<ChannelLabel, Point>, label: ChannelLabel): Point {
  const place = places.get(label);
  if (!place) throw new RangeError(`${label} has no place`);
  return place;
}
