import type { RoomPreset } from '../../dsp/room/draw-room';
import { seededRandom } from '../../dsp/signal/random';
import { checkCapture } from '../../src/reading/check-capture';
import { clockReading } from '../../src/reading/clock-reading';
import { matchClock } from '../../src/reading/match-clock';
import { readTake } from '../../src/reading/read-take';
import { finishCapture, renderMix, resampleMix } from '../../src/rig/practice-capture';
import { systemTruth } from '../../src/rig/practice-truth';
import type { PracticeFaults, PracticeSystem } from '../../src/rig/practice-system';
import type { Layout } from '../../src/system/channel';
import type { Schedule } from '../../src/take/schedule';
import { isTrouble } from '../../src/trouble';
import { drawSystem } from './draw-system';
import type { RoomFigures } from './figures';
import { compareChannels } from './compare-channels';

/** Signal-to-noise ratios at which the skew is read, dB; channels are read at the first. */
const ratiosDb = [40, 30, 10] as const;
/** Sizes of lost and repeated buffers, frames of the recorder. */
const bufferSizes = [16, 48, 64, 128, 256, 441, 480, 512, 1024, 2048, 4096];

/** Simulates one take in one drawn room, reads it, and holds the readings against the truth. */
export async function measureRoom(
  layout: Layout,
  schedule: Schedule,
  preset: RoomPreset,
  seed: number,
): Promise<RoomFigures> {
  const system = drawSystem(layout, preset, seed);
  const mix = await renderMix(system, schedule);
  const heard = mix && (await resampleMix(mix, system, schedule));
  if (!heard) throw new RangeError('the rendering must run to its end');
  const level = markRms(mix, schedule) * 10 ** (system.sensitivityDb / 20);
  const capture = (snrDb: number, faults: PracticeFaults = {}): Float32Array =>
    finishCapture(heard, noisy(system, level, snrDb), { faults });
  const skew = ratiosDb.map((snrDb) => ({
    snrDb,
    errorPpm: skewError(capture(snrDb), schedule, system.skewPpm),
  }));
  const samples = capture(ratiosDb[0]);
  const truth = systemTruth(system, layout);
  const readings = await readTake(
    schedule,
    { samples, sampleRate: 48000 },
    {
      temperatureCelsius: truth.temperatureCelsius,
      referenceDistanceMetres: truth.referenceDistanceMetres,
      simulated: true,
    },
  );
  if (isTrouble(readings)) throw new RangeError(`room ${seed}: ${readings.sentence}`);
  const buffers = measureBuffers(capture, schedule, system, seed);
  return {
    seed,
    preset,
    skew,
    buffers: { ...buffers, falseAlarms: buffers.falseAlarms + readings.clock.faults.length },
    ...compareChannels(system, layout, truth, readings.channels),
  };
}

/** The system with pink noise and hiss of equal power, so far under the mark at the microphone. */
function noisy(system: PracticeSystem, level: number, snrDb: number): PracticeSystem {
  const rms = level * 10 ** (-snrDb / 20) * Math.SQRT1_2;
  return { ...system, noise: { pink: rms, hiss: rms } };
}

/** Rms of the marks at the microphone. */
function markRms(mix: Float64Array, schedule: Schedule): number {
  const { lengthSamples } = schedule.mark;
  let power = 0;
  for (const start of schedule.markStarts) {
    for (let n = start; n < start + 2 * lengthSamples; n++) power += (mix[n] ?? 0) ** 2;
  }
  return Math.sqrt(power / (schedule.markStarts.length * lengthSamples));
}

function skewError(samples: Float32Array, schedule: Schedule, truePpm: number): number | null {
  const audio = { samples: Float64Array.from(samples), sampleRate: 48000 };
  const matched = matchClock(audio, schedule);
  return isTrouble(matched) ? null : matched.clock.skewPpm - truePpm;
}

/** Loses or repeats one buffer in each of two segments and looks whether it is found. */
function measureBuffers(
  capture: (snrDb: number, faults: PracticeFaults) => Float32Array,
  schedule: Schedule,
  { skewPpm, latencySeconds }: PracticeSystem,
  seed: number,
): RoomFigures['buffers'] {
  const random = seededRandom(seed + 0.7);
  const count = schedule.segments.length;
  const first = Math.floor(random() * (count - 2));
  const faults = [first, first + 2 + Math.floor(random() * (count - first - 2))].map((index) => {
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
  const samples = capture(ratiosDb[0], { buffers: faults });
  const audio = { samples: Float64Array.from(samples), sampleRate: 48000 };
  const matched = matchClock(audio, schedule);
  if (isTrouble(matched)) {
    return {
      planted: 2,
      found: 0,
      sizeErrors: [],
      places: [],
      falseAlarms: 0,
      wrongSegment: 0,
    };
  }
  const told = [...clockReading(matched.clock, schedule).faults];
  const checks = checkCapture(audio, matched.clock, schedule);
  const sizeErrors: number[] = [];
  const places: RoomFigures['buffers']['places'][number][] = [];
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
      const place = checks.segments[index]?.mend?.atSample;
      const error = place === undefined ? null : (place - atSample + lostBefore) / 48000;
      places.push({ inSweep, error });
    }
    lostBefore += size;
  }
  const found = sizeErrors.length;
  const falseAlarms = told.length;
  return { planted: faults.length, found, sizeErrors, places, falseAlarms, wrongSegment };
}
