import { realSpectrum } from '../../dsp/fft/fft';
import type { RoomPreset } from '../../dsp/room/draw-room';
import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { distanceBetween } from '../../dsp/room/point';
import { soundSpeed } from '../../dsp/room/room';
import { seededRandom } from '../../dsp/signal/random';
import { sweepSignal, synchronisedSweep } from '../../dsp/signal/sweep';
import type { Layout } from '../../src/system/channel';
import {
  distort,
  harmonicsOf,
  rate,
  readPlayed,
  type Polynomial,
} from '../dsp/distortion/distorted-sweep';
import { drawSystem } from './draw-system';

/** What was read of harmonics 2 to 5 of one speaker in one room. */
export interface DistortionFigures {
  readonly told: readonly {
    readonly order: number;
    /** Of the fundamental. */
    readonly hz: number;
    /** Null when not told. */
    readonly errorDb: number | null;
  }[];
  /** Told of the same speaker when it does not distort, dB: there is nothing to tell. */
  readonly ofNoneDb: readonly number[];
}

const sweep = synchronisedSweep(10, 20_000, 2 ** 17, rate);
/** Noise re full scale; the sweep's own level at the seat is some −20 dB. */
const noiseDb = -80;
/** Of the fundamental: speakers reach so low, and orders to 5 lie within the sweep. */
const fundamentals = [40, 3000] as const;
/** Of responses and reading alike. */
const half = 2 ** (1 / 12);

/**
 * The front left speaker through a drawn polynomial, harmonics 2 to 5 of a full sine −25 to −50 dB
 * each, and a room; held against the polynomial's closed form and the room's response.
 */
export function measureDistortion(
  layout: Layout,
  preset: RoomPreset,
  seed: number,
): DistortionFigures {
  const { room, speakers, microphone } = drawSystem(layout, preset, seed);
  const front = speakers.find(({ channel }) => channel === 'FL')?.speaker;
  if (!front) throw new RangeError('the layout must have FL');
  const response = impulseResponseAt(room, front, microphone, rate, 1.3, 60);
  const way = distanceBetween(front.position, microphone) / soundSpeed(room);
  const through = { response, arrival: Math.round(way * rate) };
  const polynomial = drawPolynomial(seed);
  const [first = 1, ...above] = harmonicsOf(polynomial);
  const level = bandLevels(response);
  const read = readPlayed(distort(sweep, polynomial), sweep, through, noiseDb, seed + 0.25);
  const clean = readPlayed(sweepSignal(sweep), sweep, through, noiseDb, seed + 0.35);
  return {
    told: read.harmonics.flatMap(({ order, db }) =>
      read.hz.flatMap((hz, i) => {
        if (hz < fundamentals[0] || hz > fundamentals[1]) return [];
        const own = 20 * Math.log10(Math.abs((above[order - 2] ?? 0) / first));
        const truth = own + level(order * hz) - level(hz);
        const found = db[i] ?? null;
        return [{ order, hz, errorDb: found === null ? null : found - truth }];
      }),
    ),
    ofNoneDb: clean.harmonics.flatMap(({ db }) => db.filter((one) => one !== null)),
  };
}

/** Drawn so that its harmonics are: see harmonicsOf. */
function drawPolynomial(seed: number): Polynomial {
  const random = seededRandom(seed + 0.45);
  const amplitude = (): number => 10 ** ((-25 - 25 * random()) / 20) * (random() < 0.5 ? -1 : 1);
  const [h2, h3, h4, h5] = [amplitude(), amplitude(), amplitude(), amplitude()];
  const [a4, a5] = [8 * h4, 16 * h5];
  return { a2: 2 * h2 - a4, a3: 4 * h3 - (5 / 4) * a5, a4, a5 };
}

/** Mean level of a response over 1/6 octave about a frequency, dB, from its spectrum's lines. */
function bandLevels(response: Float64Array): (hz: number) => number {
  const size = 2 ** 17;
  const spectrum = realSpectrum(response, size);
  const lineHz = rate / size;
  return (hz) => {
    let [sum, count] = [0, 0];
    for (let k = Math.ceil(hz / half / lineHz); k * lineHz <= hz * half; k++) {
      sum += (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
      count++;
    }
    return 10 * Math.log10(sum / count);
  };
}
