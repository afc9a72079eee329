import type { ChannelReading } from '../../src/reading/reading';
import type { Channel, Layout } from '../../src/system/channel';
import { nothingDeclared, type DeclaredSystem } from '../../src/system/declared-system';
import type { Walls } from '../../src/system/room-outline';
import { standingOffset, standingPlace } from '../../src/system/standing-place';

/** Whatever is measured so far. */
export interface MeasuredChannels {
  readonly channels: readonly ChannelReading[];
}

/** A speaker where it stands on the plan: metres from the listener, right and back positive. */
export interface PlacedSpeaker {
  readonly channel: Channel;
  readonly rightMetres: number;
  readonly backMetres: number;
  /** Straight line from the microphone; null until it is measured, and when that cannot be. */
  readonly distanceMetres: number | null;
  /** Whether it is drawn at a known distance. A sub's delay is none: it must be declared. */
  readonly located: boolean;
}

/**
 * Puts every speaker of a layout on the plan seen from above: measured distance where there is one
 * (never for subs), else the declared one, else the nominal one; declared direction always. A
 * height stands at the horizontal share of its distance.
 */
export function placeSpeakers(
  layout: Layout,
  readings: MeasuredChannels | null,
  nominalMetres: number,
  system: DeclaredSystem = nothingDeclared,
): PlacedSpeaker[] {
  const plan = { layout, system, nominalMetres };
  return layout.channels.map((channel) => {
    const reading = readings?.channels.find((one) => one.channel === channel.label);
    const measured = reading?.distanceMetres ?? null;
    const distanceMetres = measured !== null && measured > 0 ? measured : null;
    const place = standingPlace(plan, channel.label);
    const drawnMetres = channel.kind === 'sub' ? null : distanceMetres;
    const stands = { ...place, distanceMetres: drawnMetres ?? place.distanceMetres };
    const { rightMetres, backMetres } = standingOffset(plan, channel.label, stands);
    const located = stands.distanceMetres !== null;
    return { channel, rightMetres, backMetres, distanceMetres, located };
  });
}

/** Room kept beside and above the outermost speakers for their labels, pixels. */
const labelRoom = { beside: 48, above: 34 };

/** Kept free between a wall and the edge of the drawing, pixels. */
const wallRoom = 8;

/**
 * Pixels a metre: the widest that keeps every speaker and its label, and the walls where they are
 * known, inside a drawing of half width `reach` and no higher than wide.
 */
export function scaleOf(
  placed: readonly Pick<PlacedSpeaker, 'rightMetres' | 'backMetres'>[],
  reach: number,
  walls: Walls | null = null,
): number {
  const beside = Math.max(0.5, ...placed.map((one) => Math.abs(one.rightMetres)));
  const along = Math.max(0.5, ...placed.map((one) => Math.abs(one.backMetres)));
  const widest = walls
    ? Math.max(walls.leftMetres, walls.rightMetres, walls.aheadMetres, walls.behindMetres)
    : 0;
  return Math.min(
    (reach - labelRoom.beside) / beside,
    (reach - labelRoom.above) / along,
    widest > 0 ? (reach - wallRoom) / widest : Infinity,
  );
}

const ringSteps = [1, 2, 5, 10, 20, 50];

/** The power of ten at or above a length. */
function nextDecade(metres: number): number {
  return 10 ** Math.ceil(Math.log10(metres));
}

/** Distance rings, metres: six at most, every metre while that suffices. */
export function ringRadii(placed: readonly PlacedSpeaker[], unitMetres = 1): number[] {
  const farthest = Math.max(1, ...placed.map((one) => Math.hypot(one.rightMetres, one.backMetres)));
  const steps = ringSteps.map((one) => one * unitMetres);
  const step = steps.find((one) => farthest / one <= 6) ?? nextDecade(farthest / 6);
  const rings: number[] = [];
  for (let radius = step; radius <= farthest + step * 0.3; radius += step) rings.push(radius);
  return rings;
}
