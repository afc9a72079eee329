import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { drawHouse, type Point } from '../loop/draw-house';
import { roomResponse } from '../loop/room/room-response';

/** A living room of the loop with a layout in it, and files of what a walk through it hears. */
export interface WalkHouse {
  /** Response from a speaker to the microphone held to another: a file for the loop's room. */
  response(from: ChannelLabel, heldTo: ChannelLabel): string;
}

/** How far from a speaker's front the microphone is held, metres. */
const heldMetres = [0.15, 0.32] as const;

/**
 * Draws a house and where the tuner holds the microphone in it; the same seed is the same house.
 * Writes a file a pair of speakers into `directory`. Takes some seconds.
 */
export function buildWalkHouse(layout: Layout, seed: number, directory: string): WalkHouse {
  const { room, seat, speakers, between, normal } = drawHouse(layout, seed);
  const name = (from: ChannelLabel, heldTo: ChannelLabel): string =>
    path.join(directory, `${seed}-${from}-at-${heldTo}.f64`.replaceAll(' ', '_'));
  for (const [heldTo, { position }] of speakers) {
    const microphone = holdTo(position, seat, between, normal);
    for (const [from, speaker] of speakers) {
      const response = roomResponse({ ...room, microphone }, speaker);
      writeFileSync(name(from, heldTo), new Uint8Array(response.buffer));
    }
  }
  return { response: name };
}

/** In front of the speaker, that is towards the seat, as steady as a hand is. */
function holdTo(
  speaker: Point,
  seat: Point,
  between: (low: number, high: number) => number,
  normal: () => number,
): Point {
  const towards = speaker.map((from, axis) => (seat[axis] ?? 0) - from);
  const length = Math.hypot(...towards);
  const turned = towards.map((part) => part / length + 0.35 * normal());
  const metres = between(...heldMetres) / Math.hypot(...turned);
  const [x = 0, y = 0, z = 0] = turned.map((part, axis) => (speaker[axis] ?? 0) + metres * part);
  return [x, y, Math.max(0.08, z)];
}
