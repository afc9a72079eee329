import type { RoomPreset } from '../../dsp/room/draw-room';
import type { BufferFault } from '../../dsp/room/faults';
import { seededRandom } from '../../dsp/signal/random';
import { checkCapture } from '../../src/reading/check-capture';
import { clockReading } from '../../src/reading/clock-reading';
import { matchClock } from '../../src/reading/match-clock';
import { readTake } from '../../src/reading/read-take';
import type { Readings } from '../../src/reading/reading';
import { systemTruth } from '../../src/rig/practice-truth';
import type { PracticeSystem } from '../../src/rig/practice-system';
import type { Layout } from '../../src/system/channel';
import type { Schedule } from '../../src/take/schedule';
import { isTrouble } from '../../src/trouble';
import { skewBound } from './bounds';
import { compareChannels } from './compare-channels';
import { drawSystem } from './draw-system';
import type { RoomFigures } from './figures';
import { hearTake } from './hear-take';

/** Signal-to-noise ratio at which everything is read, dB; the skew is read in more noise too. */
export const readAtDb = 40;
/** At which levels are read once more, dB: they then lie a decibel and less off. */
export const levelsAtDb = 5;
/** Sizes of lost and repeated buffers, frames of the recorder. */
const bufferSizes = [16, 48, 64, 128, 256, 441, 480, 512, 1024, 2048, 4096];

export interface RoomQuestions {
  /** Further signal-to-noise ratios at which the skew is read, dB. */
  readonly skewAtDb: readonly number[];
  /** Whether levels are read in noise too. */
  readonly levelsInNoise: boolean;
  /** Lost buffers: not at all, in which segment, or where in the sweep too, which takes long. */
  readonly buffers: 'none' | 'segments' | 'places';
}

const everything: RoomQuestions = {
  skewAtDb: [30, 10],
  levelsInNoise: false,
  buffers: 'places',
};
const noBuffers = {
  planted: 0,
  found: 0,
  sizeErrors: [],
  places: [],
  falseAlarms: 0,
  wrongSegment: 0,
};

/** Simulates one take in one drawn room, reads it, and holds the readings against the truth. */
export async function measureRoom(
  layout: Layout,
  schedule: Schedule,
  preset: RoomPreset,
  seed: number,
  questions = everything,
): Promise<RoomFigures> {
  const system = drawSystem(layout, preset, seed);
  const { record, responses } = await hearTake(system, schedule, preset === 'live' ? 1.3 : 0.65);
  const truth = systemTruth(system, layout);
  const readAt = async (snrDb: number): Promise<Readings> => {
    const { temperatureCelsius, referenceDistanceMetres } = truth;
    const capture = { samples: record(snrDb), sampleRate: 48000 };
    const options = { temperatureCelsius, referenceDistanceMetres, simulated: true };
    const read = await readTake(schedule, capture, options);
    if (isTrouble(read)) throw new RangeError(`room ${seed}: ${read.sentence}`);
    return read;
  };
  const readings = await readAt(readAtDb);
  const inNoise = questions.levelsInNoise ? await readAt(levelsAtDb) : null;
  const { skewPpm, faults } = readings.clock;
  const noisier = questions.skewAtDb.map((snrDb) => ({
    snrDb,
    errorPpm: skewError(record(snrDb), schedule, system.skewPpm),
    boundPpm: skewBound(snrDb, schedule),
  }));
  const places = questions.buffers === 'places';
  const buffers =
    questions.buffers === 'none'
      ? noBuffers
      : measureBuffers((lost) => record(readAtDb, lost), schedule, system, places);
  return {
    seed,
    preset,
    skew: [
      {
        snrDb: readAtDb,
        errorPpm: skewPpm - system.skewPpm,
        boundPpm: skewBound(readAtDb, schedule),
      },
      ...noisier,
    ],
    buffers: { ...buffers, falseAlarms: buffers.falseAlarms + faults.length },
    ...compareChannels(system, layout, {
      truth,
      responses,
      readings: readings.channels,
      inNoise: inNoise?.channels ?? null,
    }),
  };
}

function skewError(samples: Float32Array, schedule: Schedule, truePpm: number): number | null {
  const audio = { samples: new Float64Array(samples), sampleRate: 48000 };
  const matched = matchClock(audio, schedule);
  return isTrouble(matched) ? null : matched.clock.skewPpm - truePpm;
}

/** Loses or repeats one buffer in each of two segments and looks whether it is found. */
function measureBuffers(
  record: (lost: readonly BufferFault[]) => Float32Array,
  schedule: Schedule,
  { skewPpm, latencySeconds, seed }: PracticeSystem,
  places: boolean,
): RoomFigures['buffers'] {
  const random = seededRandom(seed + 0.7);
  const count = schedule.segments.length;
  const first = Math.floor(random() * (count - 2));
  const second = first + 2 + Math.floor(random() * (count - first - 2));
  // Two faults need more sound intervals than a brief take has.
  const damaged = count < 6 ? [first] : [first, second];
  const faults = damaged.map((index) => {
    const segment = schedule.segments[Math.min(index, count - 1)];
    const size = bufferSizes[Math.floor(random() * bufferSizes.length)] ?? 512;
    const [from, to] = [(segment?.markStart ?? 0) + 4800, (segment?.end ?? 0) - 9600];
    const place = from + (to - from) * random();
    const sweepStart = segment?.sweepStart ?? 0;
    const inSweep = place > sweepStart && place < sweepStart + (segment?.sweep.lengthSamples ?? 0);
    return {
      segment: segment?.channel,
      inSweep,
      atSample: Math.round(place * (1 + skewPpm * 1e-6) + latencySeconds * 48000),
      samples: random() < 0.7 ? size : -size,
    };
  });
  const samples = record(faults);
  const audio = { samples: new Float64Array(samples), sampleRate: 48000 };
  const matched = matchClock(audio, schedule);
  if (isTrouble(matched)) {
    return { ...noBuffers, planted: faults.length };
  }
  const told = [...clockReading(matched.clock, schedule).faults];
  const checks = places ? checkCapture(audio, matched.clock, schedule) : null;
  const sizeErrors: number[] = [];
  const found: RoomFigures['buffers']['places'][number][] = [];
  let wrongSegment = 0;
  let lostBefore = 0;
  for (const { segment, samples: size, atSample, inSweep } of faults) {
    const kind = size > 0 ? 'lost' : 'repeated';
    const at = told.findIndex(
      (fault) => fault.kind === kind && Math.abs(fault.samples - Math.abs(size)) < 3,
    );
    const [fault] = at < 0 ? [] : told.splice(at, 1);
    if (fault) {
      sizeErrors.push(fault.samples - Math.abs(size));
      if (fault.channel !== segment) wrongSegment++;
      const index = schedule.segments.findIndex(({ channel }) => channel === segment);
      const place = checks?.segments[index]?.mend?.atSample;
      const error = place === undefined ? null : (place - atSample + lostBefore) / 48000;
      if (checks) found.push({ inSweep, error });
    }
    lostBefore += size;
  }
  return {
    planted: faults.length,
    found: sizeErrors.length,
    sizeErrors,
    places: found,
    falseAlarms: told.length,
    wrongSegment,
  };
}
