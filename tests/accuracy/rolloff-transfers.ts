import { realSpectrum, type HalfSpectrum } from '../../dsp/fft/fft';
import { drawRoom, drawSeats, type RoomPreset } from '../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { placeAround } from '../../dsp/room/place';
import type { Point } from '../../dsp/room/point';
import type { Speaker } from '../../dsp/room/speaker';
import { seededRandom } from '../../dsp/signal/random';

/** The bass of one room as half spectra of TRANSFER_SIZE samples at TRANSFER_RATE, no speaker in. */
export interface RoomTransfers {
  /** From the first place to eight seats, the main one first. */
  readonly seats: readonly HalfSpectrum[];
  /** From the other four places to the main seat. */
  readonly others: readonly HalfSpectrum[];
  /** From the first place to 2 to 6 cm before it: as loud as at the cone of a woofer. */
  readonly close: HalfSpectrum;
}

export const TRANSFER_RATE = 2000;
export const TRANSFER_SIZE = 4096;

/** Front, centre, side, back, height: azimuth and elevation in degrees. */
const directions = [
  [30, 0],
  [0, 0],
  [105, 0],
  [-140, 0],
  [40, 40],
] as const;

/** Transfers of a drawn room from five places to its seats. */
export function drawTransfers(preset: RoomPreset, seed: number): RoomTransfers {
  const room = drawRoom(seed, preset);
  const random = seededRandom(seed + 0.25);
  const seats = drawSeats(room, seed, 8);
  const main = seats[0] ?? { x: 1, y: 1, z: 1 };
  const places = directions.map(([azimuth, elevation]) => {
    const distance = 2 + 2 * random();
    const place = placeAround(room, main, azimuth + 8 * (random() - 0.5), elevation, distance);
    return transparent(elevation > 0 ? place : { ...place, z: 0.4 + 1.2 * random() }, main);
  });
  const from = (index: number, to: Point): HalfSpectrum => {
    const speaker = places[index];
    if (!speaker) throw new RangeError(`index must be below 5, got ${index}`);
    const response = impulseResponseAt(room, speaker, to, TRANSFER_RATE, 1.3);
    return realSpectrum(response, TRANSFER_SIZE);
  };
  const first = places[0]?.position ?? main;
  return {
    seats: seats.map((seat) => from(0, seat)),
    others: [1, 2, 3, 4].map((index) => from(index, main)),
    close: from(0, { ...first, y: first.y - (0.02 + 0.04 * random()) }),
  };
}

/** A speaker that is flat down to a hundredth of a hertz. */
function transparent(position: Point, aimAt: Point): Speaker {
  const model = {
    ...drawSpeaker(1, { box: 'sealed' }),
    box: { kind: 'sealed', resonanceHz: 0.01, q: 0.7 },
    protectionHz: null,
    bumps: [],
    tiltDbPerOctave: 0,
    crossoverHz: null,
  } as const;
  return placeSpeaker(model, position, aimAt);
}
