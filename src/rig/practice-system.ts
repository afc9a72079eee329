import type { DisturbanceKind } from '../../dsp/room/disturbances';
import { drawRoom } from '../../dsp/room/draw-room';
import type { BufferFault } from '../../dsp/room/faults';
import { distanceBetween, type Point } from '../../dsp/room/point';
import type { Room } from '../../dsp/room/room';
import type { Speaker } from '../../dsp/room/speaker';
import { gaussian, seededRandom } from '../../dsp/signal/random';
import type { ChannelLabel, Layout } from '../system/channel';
import { holdMicrophone } from './practice-hold';
import type { PracticeProcessor } from './practice-processor';
import { placePracticeSpeakers } from './practice-places';
import { isSub } from '../system/channel-names';

/** What can be broken on purpose. */
export interface PracticeFaults {
  /** Frames lost (positive) or repeated (negative), at samples of the undamaged capture. */
  readonly buffers?: readonly BufferFault[];
  /** Input overdriven: peak it clips at, 0 … 1. */
  readonly clipLevel?: number;
  readonly silent?: readonly ChannelLabel[];
  /** Speakers a channel sounds from; none is silence; a channel left out sounds from its own. */
  readonly wiring?: Readonly<Partial<Record<ChannelLabel, readonly ChannelLabel[]>>>;
  /** Speakers whose leads are exchanged, besides those the room has so. */
  readonly inverted?: readonly ChannelLabel[];
  /** Noises in the room while a speaker's sweep plays. */
  readonly disturbances?: readonly PracticeDisturbance[];
  /** The microphone's gain is turned while a speaker's sweep plays, and stays so. */
  readonly gainSteps?: readonly PracticeGainStep[];
}

/** Where in a take something happens: in a speaker's sweep. */
export interface SweepPlace {
  readonly channel: ChannelLabel;
  /** Which of the speaker's sweeps in the take, from 0 (the default). */
  readonly sweep?: number;
  /** After the start of the sweep; default a third of its length. */
  readonly afterSeconds?: number;
}

/** A noise that is not the system's. */
export interface PracticeDisturbance extends SweepPlace {
  readonly kind: DisturbanceKind;
  /** Its peak, dB re full scale of the capture; default that of a plausible one. */
  readonly peakDb?: number;
}

export interface PracticeGainStep extends SweepPlace {
  readonly db: number;
}

/** What a simulated room is made from. Plain data, so that it travels to a worker. */
export interface PracticeRoom {
  readonly layout: Layout;
  /** Which invented room; the same seed is the same room. */
  readonly seed: number;
  /** Which place of the microphone in it, from 0, the main seat. */
  readonly seat: number;
  /** The speaker the microphone is held to instead of the seat; null: it stands there. */
  readonly hold: ChannelLabel | null;
  /** How far from it, metres; default as on a walk. */
  readonly holdMetres?: number;
  readonly faults: PracticeFaults;
  /** Whether the recorder's second input hears what the reference speaker's output plays. */
  readonly loopback: boolean;
  /** What stands before its speakers while a take proves it; left out: nothing. */
  readonly processor?: PracticeProcessor;
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

/** The invented system of a practice room, its microphone where the room has it. */
export function systemIn({ layout, seed, seat, hold, holdMetres }: PracticeRoom): PracticeSystem {
  const system = practiceSystem(layout, seed, seat);
  if (hold === null) return system;
  const speaker = system.speakers.find(({ channel }) => channel === hold);
  if (!speaker) throw new RangeError(`layout ${layout.name} has no speaker ${hold}`);
  return { ...system, microphone: holdMicrophone(system.room, speaker, seed, holdMetres) };
}

/**
 * The invented system of a layout and a seed: pairs of one model (one of them a little off), fronts
 * at 2.40 m, modest noise, a clock off by tens of ppm, on odd seeds one inverted speaker.
 * Other seats than 0 move the microphone only. Throws RangeError for a seat that is no index.
 */
export function practiceSystem(layout: Layout, seed: number, seat = 0): PracticeSystem {
  if (!(Number.isInteger(seat) && seat >= 0)) throw new RangeError(`no seat ${seat}`);
  const random = seededRandom(seed + 0.125);
  const normal = gaussian(random);
  const room = livingRoom(seed, random);
  const mainSeat = seatIn(room, random);
  const placed = placePracticeSpeakers(layout, room, mainSeat, seed);
  const microphone = seat === 0 ? mainSeat : otherSeat(room, mainSeat, placed, seed, seat);
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

/** A place within an arm's length or two of the main seat, off walls and speakers. */
function otherSeat(
  { size }: Room,
  main: Point,
  speakers: readonly PracticeSpeaker[],
  seed: number,
  seat: number,
): Point {
  const random = seededRandom(seed + 0.25 + 1000 * seat);
  const off = (at: number, wall: number): number => Math.min(wall - 0.4, Math.max(0.4, at));
  const draw = (): Point => ({
    x: off(main.x + 1.6 * (random() - 0.5), size.x),
    y: off(main.y + 1.2 * (random() - 0.5), size.y),
    z: main.z + 0.2 * (random() - 0.5),
  });
  const room = (at: Point): number =>
    Math.min(...speakers.map(({ speaker }) => distanceBetween(speaker.position, at)));
  // The roomiest of a few: a microphone is not put against a speaker.
  return [draw(), draw(), draw(), draw()].reduce((best, one) =>
    room(one) > Math.min(0.8, room(best)) && room(best) < 0.8 ? one : best,
  );
}

/** Swaps the leads of one speaker that is neither the reference nor a sub. */
function invertOne(
  speakers: readonly PracticeSpeaker[],
  random: () => number,
): readonly PracticeSpeaker[] {
  const able = speakers.filter(
    ({ channel, bounced }) => channel !== 'FL' && !isSub(channel) && !bounced,
  );
  const chosen = able[Math.floor(random() * able.length)];
  return speakers.map((entry) =>
    entry === chosen ? { ...entry, speaker: { ...entry.speaker, inverted: true } } : entry,
  );
}
