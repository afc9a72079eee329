import { realSignal, realSpectrum, type HalfSpectrum } from '../../dsp/fft/fft';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { drawRoom, drawSeats, type RoomPreset } from '../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { placeAround } from '../../dsp/room/place';
import { boxResponse, coneResponse } from '../../dsp/room/box';
import type { Complex } from '../../dsp/room/section';
import type { Point } from '../../dsp/room/point';
import type { Speaker, SpeakerModel } from '../../dsp/room/speaker';
import { speakerResponses } from '../../dsp/room/speaker-response';
import { seededRandom } from '../../dsp/signal/random';

/** The bass of one room as half spectra of TRANSFER_SIZE samples at TRANSFER_RATE, no speaker in. */
export interface BassRoom {
  /** From one of five places to one of eight seats, the main seat first. */
  transfer(place: number, seat: number): HalfSpectrum;
  /** From the first place to 2 to 6 cm before it: as loud as at the cone of a woofer. */
  close(): HalfSpectrum;
}

export const TRANSFER_RATE = 2000;
export const TRANSFER_SIZE = 4096;
const DELAY_SECONDS = 0.1;
/** Only levels count here. */
const FALL_DB = 40;

/** Front, centre, side, back, height: azimuth and elevation in degrees. */
const directions = [
  [30, 0],
  [0, 0],
  [105, 0],
  [-140, 0],
  [40, 40],
] as const;

/** A drawn room with five places for speakers, 2 to 4 m away, and eight seats. */
export function drawBassRoom(preset: RoomPreset, seed: number): BassRoom {
  const room = drawRoom(seed, preset);
  const random = seededRandom(seed + 0.25);
  const seats = drawSeats(room, seed, 8);
  const main = seats[0] ?? { x: 1, y: 1, z: 1 };
  const places = directions.map(([azimuth, elevation]) => {
    const distance = 2 + 2 * random();
    const place = placeAround(room, main, azimuth + 8 * (random() - 0.5), elevation, distance);
    return transparent(elevation > 0 ? place : { ...place, z: 0.4 + 1.2 * random() }, main);
  });
  const near = 0.02 + 0.04 * random();
  const from = (index: number, to: Point | undefined): HalfSpectrum => {
    const speaker = places[index];
    if (!speaker || !to) throw new RangeError(`places count from 0 to 4, got ${index}`);
    const response = impulseResponseAt(room, speaker, to, TRANSFER_RATE, 1.3, FALL_DB);
    return realSpectrum(response, TRANSFER_SIZE);
  };
  const first = places[0]?.position ?? main;
  return {
    transfer: (place, seat) => from(place, seats[seat]),
    close: () => from(0, { ...first, y: first.y - near }),
  };
}

/** Complex response at a frequency, of a part of a speaker re the whole of it. */
export type PartOf = (speaker: SpeakerModel, hz: number) => Complex;

/**
 * A speaker through a transfer, or alone; later by 0.1 s so that what precedes it stays inside.
 * `part`: what of it is heard; left out: all.
 */
export function responseThrough(
  transfer: HalfSpectrum | null,
  speaker: SpeakerModel,
  part?: PartOf,
): ImpulseResponse {
  const own = part ? delayedResponse(speaker, part) : wholeResponse(speaker);
  const spectrum = own.slice();
  if (transfer) {
    for (let k = 2; k < TRANSFER_SIZE; k += 2) {
      const [re, im] = [own[k] ?? 0, own[k + 1] ?? 0];
      const [x, y] = [transfer[k] ?? 0, transfer[k + 1] ?? 0];
      spectrum[k] = x * re - y * im;
      spectrum[k + 1] = x * im + y * re;
    }
  }
  return {
    samples: realSignal(spectrum, TRANSFER_SIZE),
    sampleRate: TRANSFER_RATE,
    zeroIndex: Math.round(DELAY_SECONDS * TRANSFER_RATE),
  };
}

const wholeResponses = new WeakMap<SpeakerModel, HalfSpectrum>();

/** delayedResponse of all of a speaker, which is heard through many transfers. */
function wholeResponse(speaker: SpeakerModel): HalfSpectrum {
  const response = wholeResponses.get(speaker) ?? delayedResponse(speaker);
  wholeResponses.set(speaker, response);
  return response;
}

/** A speaker's response, or a part of it, later by DELAY_SECONDS. */
function delayedResponse(speaker: SpeakerModel, part?: PartOf): HalfSpectrum {
  const spectrum = new Float64Array(TRANSFER_SIZE + 2);
  const response = speakerResponses(speaker);
  for (let k = 1; k < TRANSFER_SIZE / 2; k++) {
    const hz = (k * TRANSFER_RATE) / TRANSFER_SIZE;
    const [a, b] = part ? product(response(hz), part(speaker, hz)) : response(hz);
    const cos = delayTurns[2 * k] ?? 0;
    const sin = delayTurns[2 * k + 1] ?? 0;
    spectrum[2 * k] = a * cos - b * sin;
    spectrum[2 * k + 1] = a * sin + b * cos;
  }
  return spectrum;
}

/** e^(−2πi f DELAY_SECONDS) at all bins. */
const delayTurns = Float64Array.from({ length: TRANSFER_SIZE }, (_, n) => {
  const turn = (-2 * Math.PI * (n >> 1) * TRANSFER_RATE * DELAY_SECONDS) / TRANSFER_SIZE;
  return n % 2 === 0 ? Math.cos(turn) : Math.sin(turn);
});

/** The cone of a vented box without its port, which leaks a tenth. */
export const coneAlone: PartOf = ({ box }, hz) => {
  return quotient(coneResponse(box, hz, 0.1), boxResponse(box, hz));
};

/** How a vented box is built and heard: radii and distance of cone and port, metres. */
export interface Openings {
  readonly coneRadius: number;
  readonly portRadius: number;
  readonly apart: number;
  /** How much later the port's capture counts its time, seconds. */
  readonly lateSeconds: number;
}

/**
 * What is heard in front of the cone and in the port's mouth, as loud as the box in front of the
 * cone: an opening near by goes as volume velocity over radius, the other as over four times the
 * distance (full space), and late by it. The port sends what the box sends less what its cone does.
 */
export function heardClose({ coneRadius, portRadius, apart, lateSeconds }: Openings) {
  const parts = ({ box }: SpeakerModel, hz: number): { cone: Complex; port: Complex } => {
    const cone = quotient(coneResponse(box, hz), boxResponse(box, hz));
    return { cone, port: [1 - cone[0], -cone[1]] };
  };
  const across = (hz: number, radius: number): Complex => {
    const turn = (-2 * Math.PI * hz * apart) / 343;
    const gain = radius / (4 * apart);
    return [gain * Math.cos(turn), gain * Math.sin(turn)];
  };
  const atCone: PartOf = (speaker, hz) => {
    const { cone, port } = parts(speaker, hz);
    return sum(cone, product(port, across(hz, coneRadius)));
  };
  const atPort: PartOf = (speaker, hz) => {
    const { cone, port } = parts(speaker, hz);
    const scale = coneRadius / portRadius;
    const heard = sum([scale * port[0], scale * port[1]], product(cone, across(hz, coneRadius)));
    const turn = 2 * Math.PI * hz * lateSeconds;
    return product(heard, [Math.cos(turn), Math.sin(turn)]);
  };
  return { atCone, atPort };
}

function sum([a, b]: Complex, [c, d]: Complex): Complex {
  return [a + c, b + d];
}

function product([a, b]: Complex, [c, d]: Complex): Complex {
  return [a * c - b * d, a * d + b * c];
}

function quotient([a, b]: Complex, [c, d]: Complex): Complex {
  const size = c * c + d * d;
  return [(a * c + b * d) / size, (b * c - a * d) / size];
}

/** A speaker that is flat down to a hundredth of a hertz. */
export function transparent(position: Point, aimAt: Point): Speaker {
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
