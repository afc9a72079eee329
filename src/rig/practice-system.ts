import { drawRoom } from '../../dsp/room/draw-room';
import type { BufferFault } from '../../dsp/room/faults';
import type { Point } from '../../dsp/room/point';
import type { Room } from '../../dsp/room/room';
import type { Speaker } from '../../dsp/room/speaker';
import { gaussian, seededRandom } from '../../dsp/signal/random';
import type { ChannelLabel, Layout } from '../system/channel';
import { placePracticeSpeakers } from './practice-places';

/** What can be broken on purpose. */
export interface PracticeFaults {
  /** Frames lost (positive) or repeated (negative), at samples of the undamaged capture. */
  readonly buffers?: readonly BufferFault[];
  /** Input overdriven: peak it clips at, 0 … 1. */
  readonly clipLevel?: number;
  readonly silent?: readonly ChannelLabel[];
}

/** One loudspeaker of a simulated system. `bounced` heights play by way of the ceiling. */
export interface PracticeSpeaker {
  readonly channel: ChannelLabel;
  readonly speaker: Speaker;
  readonly bounced: boolean;
}

/** A simulated room with its speakers, microphone and second clock. */
export interface PracticeSystem {
  readonly room: Room;
  readonly microphone: Point;
  readonly speakers: readonly PracticeSpeaker[];
  /** captured sample = played sample × (1 + skewPpm·10⁻⁶). */
  readonly skewPpm: number;
  /** From the first captured to the first played sample, seconds. */
  readonly latencySeconds: number;
  /** Rms over the whole band, full scale 1. */
  readonly noise: { readonly pink: number; readonly hiss: number };
  /** From sound pressure (1 at 1 m in a speaker's passband) to full scale, dB. */
  readonly sensitivityDb: number;
  readonly seed: number;
}

/** Temperature and distance to the reference speaker of every practice room, as a tuner types them. */
export const practiceCelsius = 20;
export const practiceReferenceMetres = 2.4;

/**
 * The invented system of a layout and a seed: pairs of one model (one of them a little off), fronts
 * at 2.40 m, modest noise, a clock off by tens of ppm, on odd seeds one inverted speaker.
 */
export function practiceSystem(layout: Layout, seed: number): PracticeSystem {
  const random = seededRandom(seed + 0.125);
  const normal = gaussian(random);
  const room = livingRoom(seed, random);
  const microphone = seatIn(room, random);
  const placed = placePracticeSpeakers(layout, room, microphone, seed);
  const pinkDb = -82 + 8 * random();
  const slow = random() < 0.5 ? -1 : 1;
  return {
    room,
    microphone,
    speakers: seed % 2 === 0 ? placed : invertOne(placed, random),
    skewPpm: slow * (18 + Math.abs(25 * normal())),
    latencySeconds: 0.12 + 0.25 * random(),
    noise: { pink: 10 ** (pinkDb / 20), hiss: 10 ** (-94 / 20) },
    sensitivityDb: -14,
    seed,
  };
}

/** A typical room, just large enough for fronts at 2.4 m that stand off the wall. */
function livingRoom(seed: number, random: () => number): Room {
  const size = { x: 3.6 + 1.3 * random(), y: 3.8 + random(), z: 2.35 + 0.5 * random() };
  return { ...drawRoom(seed, 'typical', size), celsius: practiceCelsius };
}

/** A seat near the middle line, the fronts 2.08 m before it and 0.3 to 0.6 m before the wall. */
function seatIn({ size }: Room, random: () => number): Point {
  const back = size.y - practiceReferenceMetres * Math.cos(Math.PI / 6) - 0.3 - 0.3 * random();
  const aside = Math.min(0.3, size.x / 2 - 1.5);
  return { x: size.x / 2 + aside * (2 * random() - 1), y: back, z: 1 + 0.2 * random() };
}

/** Swaps the leads of one speaker that is neither the reference nor a sub. */
function invertOne(
  speakers: readonly PracticeSpeaker[],
  random: () => number,
): readonly PracticeSpeaker[] {
  const able = speakers.filter(
    ({ channel, bounced }) => channel !== 'FL' && !channel.startsWith('Sub') && !bounced,
  );
  const chosen = able[Math.floor(random() * able.length)];
  return speakers.map((entry) =>
    entry === chosen ? { ...entry, speaker: { ...entry.speaker, inverted: true } } : entry,
  );
}
