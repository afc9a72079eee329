import { isImperial, metresPerFoot, shortLengthText } from '../../src/locale/length-text';
import type { DeclaredSystem } from '../../src/system/declared-system';
import { wallsOf, type Walls } from '../../src/system/room-outline';
import { textWidth } from '../charts/text-width';
import { placeLabels, type Box } from './place-labels';
import { placeRingLabels, type RingLabel } from './place-ring-labels';
import { ringRadii, scaleOf, type PlacedSpeaker } from './place-speakers';
import { symbolHalf } from './speaker-shape';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where everything on the plan goes, pixels from the listener. */
export interface Arrangement {
  readonly reach: number;
  readonly perMetre: number;
  readonly top: number;
  readonly bottom: number;
  readonly rings: readonly number[];
  readonly ringLabels: readonly RingLabel[];
  /** Middles and labels of the speakers, then of the seats. */
  readonly symbols: readonly Point[];
  readonly labels: readonly Box[];
  readonly seats: readonly Point[];
  readonly seatLabels: readonly Box[];
}

/** Kept free above and below all that is drawn, pixels. */
const margin = 6;

/** The font of the labels of a drawing, for measuring them. */
export function labelFont(drawing: Element): string {
  return `700 13px ${getComputedStyle(drawing).getPropertyValue('--face')}`;
}

/** Finds scale, rings and labels of a plan in a drawing of half width `reach` pixels. */
export function arrangePlan(
  placed: readonly PlacedSpeaker[],
  { room, seats: others }: DeclaredSystem,
  reach: number,
  font: string,
): Arrangement {
  const walls = room && wallsOf(room);
  const perMetre = scaleOf([...placed, ...others], reach, walls);
  const toPoint = (one: { rightMetres: number; backMetres: number }): Point => ({
    x: one.rightMetres * perMetre,
    y: one.backMetres * perMetre,
  });
  const symbols = placed.map(toPoint);
  const seats = others.map(toPoint);
  const listener: Box = { x: 0, y: 0, halfWidth: 9, halfHeight: 9 };
  const texts = [...placed.map((one) => one.channel.label), ...others.map((seat) => seat.name)];
  const all = placeLabels(
    [...symbols, ...seats].map((at, index) => ({
      ...at,
      halfWidth: textWidth(texts[index] ?? '', font) / 2 + 2,
      halfHeight: 8,
    })),
    { reach, symbol: symbolHalf, obstacles: [listener] },
  );
  const squares = [...symbols, ...seats].map((at) => ({
    ...at,
    halfWidth: symbolHalf,
    halfHeight: symbolHalf,
  }));
  const taken = [...all, ...squares, listener];
  const rings = ringRadii(placed, isImperial() ? metresPerFoot : 1)
    .filter((radius) => radius * perMetre < reach)
    .map((metres) => ({ text: shortLengthText(metres, 0), radius: metres * perMetre }));
  // Walls cut the rings off.
  const outer = walls ? 0 : Math.max(0, ...rings.map(({ radius }) => radius));
  const ahead = (walls?.aheadMetres ?? 0) * perMetre;
  const behind = (walls?.behindMetres ?? 0) * perMetre;
  return {
    reach,
    perMetre,
    top: Math.min(-outer, -ahead, ...taken.map((box) => box.y - box.halfHeight)) - margin,
    bottom: Math.max(outer, behind, ...taken.map((box) => box.y + box.halfHeight)) + margin,
    rings: rings.map(({ radius }) => radius),
    ringLabels: placeRingLabels(rings, reach, taken).filter((label) =>
      isInside(label, walls, perMetre),
    ),
    symbols,
    labels: all.slice(0, symbols.length),
    seats,
    seatLabels: all.slice(symbols.length),
  };
}

/** Whether a label stands wholly within the walls, where there are any. */
function isInside(label: Box, walls: Walls | null, perMetre: number): boolean {
  if (!walls) return true;
  return (
    label.x - label.halfWidth > -walls.leftMetres * perMetre &&
    label.x + label.halfWidth < walls.rightMetres * perMetre &&
    label.y - label.halfHeight > -walls.aheadMetres * perMetre &&
    label.y + label.halfHeight < walls.behindMetres * perMetre
  );
}
