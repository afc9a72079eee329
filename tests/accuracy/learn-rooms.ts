import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { drawSpeaker } from '../../dsp/room/draw-speaker';
import { rolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { SEAT_ENTRIES, seatLevelsDb } from '../../dsp/rolloff/seat-levels';
import { sealedResponse, ventedResponse } from '../../dsp/rolloff/box-response';
import { seededRandom } from '../../dsp/signal/random';
import {
  freeResponse,
  makeModalRoom,
  modalResponse,
  withRipple,
  type Point,
} from '../dsp/rolloff/modal-room';
import { eigenOf } from './eigen';
import { drawBassRoom, responseThrough } from './rolloff-transfers';
import { firstTuningSeed } from './seeds';

/**
 * Learns what rooms add to a speaker's levels from the tuning rooms and writes it to
 * dsp/rolloff/learnt/: `tsx tests/accuracy/learn-rooms.ts`, some minutes; prettier formats it.
 */
const { values } = parseArgs({ options: { rooms: { type: 'string', default: '100' } } });
const rooms = Number(values.rooms);
if (!(rooms >= 1)) throw new RangeError(`--rooms takes a count, got ${values.rooms}`);

/** Kinds of room and their weight; 'modal' is of a generator of its own, stiffer in the bass. */
const kinds: readonly (readonly [RoomPreset | 'modal', number])[] = [
  ['typical', 1],
  ['leaky', 1],
  ['live', 1],
  ['large', 0.5],
  ['modal', 1],
];
/** Place and seat of the readings of a room; each place has a speaker of its own. */
const readings = [
  [0, 0],
  [0, 1],
  [0, 2],
  [1, 0],
  [1, 1],
  [2, 0],
  [2, 1],
  [3, 0],
  [4, 0],
] as const;
/** What is left out of a covariance, of the trace of all. */
const leftOut = 0.005;
const target = new URL('../../dsp/rolloff/learnt/', import.meta.url);

/** In-room less own levels of all readings in one room, dB. */
function residuals(preset: RoomPreset | 'modal', seed: number): Float64Array[] {
  if (preset === 'modal') return modalResiduals(seed);
  const room = drawBassRoom(preset, seed);
  return readings.map(([place, seat]) => {
    const speaker = drawSpeaker(10 * seed + place, { misaligned: seed % 4 === 0 });
    const level = (transfer: Float64Array | null): Float64Array =>
      seatLevelsDb(rolloffBands(responseThrough(transfer, speaker), null));
    const own = level(null);
    return level(room.transfer(place, seat)).map((db, entry) => db - (own[entry] ?? 0));
  });
}

function modalResiduals(seed: number): Float64Array[] {
  const random = seededRandom(seed + 0.6);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const size = [between(3.8, 6.5), between(3, 5.2), between(2.3, 3)] as const;
  const seconds = 0.15 * 6 ** random();
  const room = makeModalRoom(size, [seconds * between(0.6, 2), seconds], random);
  const seats = [0, 1, 2].map((): Point => [
    size[0] * between(0.4, 0.85),
    size[1] * between(0.25, 0.75),
    between(1, 1.3),
  ]);
  const speakers = [0, 1, 2, 3, 4].map((place) => {
    const f0 = 20 * 5 ** random();
    const box =
      (seed + place) % 2 === 0
        ? sealedResponse(f0, between(0.5, 1.1))
        : ventedResponse(f0, between(-1, 1));
    const along = place < 2 ? between(0.3, 0.8) : between(0.3, size[0] - 0.3);
    const at: Point = [along, between(0.3, size[1] - 0.3), between(0.4, 1.8)];
    return { response: withRipple(box, 0.6, 0.3, random), at };
  });
  return readings.map(([place, seat]) => {
    const speaker = speakers[place];
    const listener = seats[seat];
    if (!speaker || !listener) throw new RangeError(`no place ${place} or seat ${seat}`);
    const own = seatLevelsDb(rolloffBands(freeResponse(speaker.response), null));
    const heard = modalResponse(room, speaker.at, listener, speaker.response);
    return seatLevelsDb(rolloffBands(heard, null)).map((db, entry) => db - (own[entry] ?? 0));
  });
}

interface Learnt {
  readonly weight: number;
  readonly room: Float64Array[];
}

const learnt: Learnt[] = kinds.flatMap(([preset, weight]) =>
  Array.from({ length: rooms }, (_, i) => {
    if (process.stderr.isTTY) process.stderr.write(`\r${preset} ${i + 1} `);
    return { weight, room: residuals(preset, firstTuningSeed + i) };
  }),
);

const total = learnt.reduce((sum, { weight }) => sum + weight, 0);
const mean = new Float64Array(SEAT_ENTRIES);
for (const { weight, room } of learnt) {
  for (const one of room) {
    one.forEach((db, e) => (mean[e] = (mean[e] ?? 0) + (weight * db) / (total * room.length)));
  }
}

/** Mean product about the mean over the pairs of readings that `counts` picks, n × n in rows. */
function covariance(counts: (a: number, b: number) => boolean): Float64Array {
  const n = SEAT_ENTRIES;
  const sum = new Float64Array(n * n);
  const pairs = readings.flatMap((_, a) =>
    readings.flatMap((_, b) => (counts(a, b) ? [[a, b] as const] : [])),
  );
  for (const { weight, room } of learnt) {
    for (const [a, b] of pairs) {
      const [p, q] = [room[a] ?? mean, room[b] ?? mean];
      for (let i = 0; i < n; i++) {
        const x = (weight * ((p[i] ?? 0) - (mean[i] ?? 0))) / (total * pairs.length);
        for (let j = 0; j < n; j++) {
          sum[i * n + j] = (sum[i * n + j] ?? 0) + x * ((q[j] ?? 0) - (mean[j] ?? 0));
        }
      }
    }
  }
  return sum.map((value, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    return 0.5 * (value + (sum[j * n + i] ?? 0));
  });
}

const placeOf = (reading: number): number => readings[reading]?.[0] ?? 0;
const one = covariance((a, b) => a === b);
const samePlace = covariance((a, b) => a !== b && placeOf(a) === placeOf(b));
const others = covariance((a, b) => placeOf(a) !== placeOf(b));
const trace = one.reduce(
  (sum, value, at) => (at % (SEAT_ENTRIES + 1) === 0 ? sum + value : sum),
  0,
);

/** Rows whose products make up the positive part of a covariance but for a small rest. */
function factors(matrix: Float64Array): number[][] {
  const positive = eigenOf(matrix, SEAT_ENTRIES).filter(({ value }) => value > 0);
  let rest = positive.reduce((sum, { value }) => sum + value, 0);
  const kept: number[][] = [];
  for (const { value, vector } of positive) {
    if (rest < leftOut * trace) break;
    rest -= value;
    kept.push([...vector].map((x) => rounded(x * Math.sqrt(value))));
  }
  return kept;
}

function rounded(value: number): number {
  return Math.round(100 * value) / 100 + 0;
}

const minus = (a: Float64Array, b: Float64Array): Float64Array =>
  a.map((value, at) => value - (b[at] ?? 0));

/** Writes one file with one constant. */
function write(file: string, what: string, name: string, type: string, value: unknown): void {
  const origin = `// Learnt from ${kinds.length * rooms} simulated rooms by tests/accuracy/learn-rooms.ts.`;
  const text = `${origin}\n\n/** ${what} */\nexport const ${name}: ${type} = ${JSON.stringify(value)};\n`;
  writeFileSync(fileURLToPath(new URL(file, target)), text);
}

const row = 'readonly number[]';
const rows = `readonly (${row})[]`;
const products = 'dB, over the entries of seat-levels: products of rows, summed, are covariances.';
write(
  'seat-mean.ts',
  'Mean of in-room less own level, dB, over the entries of seat-levels.',
  'SEAT_MEAN_DB',
  row,
  [...mean].map(rounded),
);
write(
  'of-room.ts',
  `What a room does to all speakers alike, ${products}`,
  'OF_ROOM',
  rows,
  factors(others),
);
write(
  'of-place.ts',
  `What a room does to one speaker at all seats, ${products}`,
  'OF_PLACE',
  rows,
  factors(minus(samePlace, others)),
);
write(
  'of-reading.ts',
  `What a room does to one speaker at one seat, ${products}`,
  'OF_READING',
  rows,
  factors(minus(one, samePlace)),
);
