import { realSpectrum, type HalfSpectrum } from '../../dsp/fft/fft';
import { bassGrid, bassTransfer, type SeatTransfers, type Transfer } from '../../dsp/bass/transfer';
import { multiplyTransfers } from '../../dsp/bass/electrical-path';
import { drawRoom, drawSeats, type RoomPreset } from '../../dsp/room/draw-room';
import { drawSpeaker } from '../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { placeAround } from '../../dsp/room/place';
import { distanceBetween, type Point } from '../../dsp/room/point';
import { soundSpeed } from '../../dsp/room/room';
import type { SpeakerModel } from '../../dsp/room/speaker';
import { speakerResponses } from '../../dsp/room/speaker-response';
import { seededRandom } from '../../dsp/signal/random';
import { findArrival } from '../../dsp/timing/find-arrival';
import { responseThrough, TRANSFER_RATE, TRANSFER_SIZE, transparent } from './rolloff-transfers';

export const hz = bassGrid();
/** Seats that a microphone stood at; the others are only judged. */
export const measuredSeats = 6;
const allSeats = 9;
/** What the room returns below this hardly moves a sum. */
const fallDb = 35;

/** One source in its place, levelled. */
export interface SceneSource {
  readonly model: SpeakerModel;
  /** As captured at every seat, the measured ones first. */
  readonly seats: SeatTransfers;
  /** Its direct sound alone at the same seats. */
  readonly direct: SeatTransfers;
  /** From source to first seat, seconds, without what is inside the speaker. */
  readonly pathSeconds: number;
}

/** A sub, and when it is read to arrive at the first seat, seconds; null where that is not told. */
export interface SceneSub extends SceneSource {
  readonly arrivalSeconds: number | null;
}

/** A main and two subs in a drawn room. */
export interface BassScene {
  readonly main: SceneSource;
  readonly subs: readonly [SceneSub, SceneSub];
  /** The room alone from the main's place to each measured seat. */
  readonly mainRooms: readonly HalfSpectrum[];
}

/**
 * A room with a main 2 to 4 m from the first seat and two subs on the floor at the walls, one in
 * front; sealed and vented, mains with f3 20 to 120 Hz, subs with up to 8 ms of delay inside, a
 * quarter of them turned over. Subs are levelled at the measured seats: their 30 to 80 Hz against
 * the main's 200 to 450 Hz.
 */
export function drawBassScene(preset: RoomPreset, seed: number): BassScene {
  const room = drawRoom(seed, preset);
  const random = seededRandom(seed + 0.6);
  const seats = drawSeats(room, seed, allSeats);
  const [first = { x: 1, y: 1, z: 1 }] = seats;
  const around = (azimuth: number, distance: number): Point =>
    placeAround(room, first, azimuth, 0, distance);
  const side = random() < 0.5 ? 1 : -1;
  const mainPlace = {
    ...around(side * (26 + 8 * random()), 2 + 2 * random()),
    z: 0.4 + 0.8 * random(),
  };
  const front = { ...around(100 * (random() - 0.5), 12), z: 0.25 };
  const anywhere = { ...around(60 + 240 * random(), 12), z: 0.25 };
  const sub = (index: number): SpeakerModel => ({
    ...drawSpeaker(10 * seed + 7 + index, { kind: 'sub' }),
    delaySeconds: 0.008 * random(),
    inverted: random() < 0.25,
  });
  const responses = (place: Point): Float64Array[] =>
    seats.map((seat) =>
      impulseResponseAt(room, transparent(place, seat), seat, TRANSFER_RATE, 1.3, fallDb),
    );
  const source = (place: Point, model: SpeakerModel, rooms: Float64Array[]): SceneSource => {
    const own = ownTransfer(model);
    return {
      model,
      seats: rooms.map((samples) =>
        multiplyTransfers(
          bassTransfer({ samples, sampleRate: TRANSFER_RATE, zeroIndex: 0 }, hz),
          own,
        ),
      ),
      direct: seats.map((seat) => {
        const metres = Math.max(distanceBetween(place, seat), 0.1);
        return multiplyTransfers(own, delayed(metres / soundSpeed(room), 1 / metres));
      }),
      pathSeconds: distanceBetween(place, first) / soundSpeed(room),
    };
  };
  const mainRooms = responses(mainPlace);
  const main = source(mainPlace, drawSpeaker(10 * seed), mainRooms);
  const wished = bandPower(main.seats, 200, 450);
  const levelled = (place: Point, model: SpeakerModel): SceneSub => {
    const rooms = responses(place);
    const raw = source(place, model, rooms);
    const gain = Math.sqrt(wished / bandPower(raw.seats, 30, 80));
    const scale = (one: Transfer): Transfer => multiplyTransfers(one, delayed(0, gain));
    return {
      ...raw,
      seats: raw.seats.map(scale),
      direct: raw.direct.map(scale),
      arrivalSeconds: readArrival(rooms[0], model),
    };
  };
  return {
    main,
    subs: [levelled(front, sub(0)), levelled(anywhere, sub(1))],
    mainRooms: mainRooms
      .slice(0, measuredSeats)
      .map((samples) => realSpectrum(samples, TRANSFER_SIZE)),
  };
}

/** The top of what these responses hold: a sub is read in the uppermost band it carries. */
const treble = { lowHz: 450, highHz: 900 };

/** The arrival as a reading finds it in the bass. */
function readArrival(samples: Float64Array | undefined, model: SpeakerModel): number | null {
  if (!samples) throw new RangeError('a scene has a first seat');
  const arrival = findArrival(responseThrough(realSpectrum(samples, TRANSFER_SIZE), model), treble);
  return arrival && arrival.seconds + model.delaySeconds;
}

function ownTransfer(model: SpeakerModel): Transfer {
  const response = speakerResponses(model);
  const all = [...hz].map((f) => response(f));
  return multiplyTransfers(
    { re: Float64Array.from(all, ([re]) => re), im: Float64Array.from(all, ([, im]) => im) },
    delayed(model.delaySeconds, 1),
  );
}

function delayed(seconds: number, gain: number): Transfer {
  return {
    re: hz.map((f) => gain * Math.cos(2 * Math.PI * f * seconds)),
    im: hz.map((f) => -gain * Math.sin(2 * Math.PI * f * seconds)),
  };
}

/** Mean power over the measured seats and log f. */
function bandPower(seats: SeatTransfers, lowHz: number, highHz: number): number {
  let [sum, count] = [0, 0];
  for (const { re, im } of seats.slice(0, measuredSeats)) {
    for (const [k, f] of hz.entries()) {
      if (f < lowHz || f > highHz) continue;
      sum += (re[k] ?? 0) ** 2 + (im[k] ?? 0) ** 2;
      count++;
    }
  }
  return sum / count;
}
