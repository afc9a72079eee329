import { speedOfSound } from '../../dsp/level/speed-of-sound';
import { rolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { groundTake } from '../../src/reading/ground-take';
import { createResponder } from '../../src/reading/impulse-responses';
import { inspectSweep } from '../../src/reading/inspect-sweep';
import { readChannel } from '../../src/reading/read-channel';
import { readDistortion } from '../../src/reading/read-distortion';
import { readRolloffOf } from '../../src/reading/read-rolloff';
import { arrivalFromMarks } from '../../src/reading/reference-arrival';
import { readNoiseFloor } from '../../src/reading/noise-floor';
import { isTrouble } from '../../src/trouble';
import type { SpeedTake } from './make-take';

/** What both readers do, step by step. */
export const steps = [
  'clock and checks',
  'responses',
  'other sound',
  'distortion',
  'roll-off',
  'the rest',
] as const;
export type Seconds = Readonly<Record<(typeof steps)[number] | 'total', number>>;

/** Seconds of a core that each step of a reading takes, all on this thread; total is their sum. */
export function timeSteps({ schedule, samples }: SpeedTake): Seconds {
  const took = Object.fromEntries([...steps, 'total'].map((step) => [step, 0])) as Record<
    keyof Seconds,
    number
  >;
  const time = <T>(step: keyof Seconds, what: () => T): T => {
    const before = process.cpuUsage();
    const result = what();
    const { user, system } = process.cpuUsage(before);
    took[step] += (user + system) / 1e6;
    took.total += (user + system) / 1e6;
    return result;
  };
  const { ground, audio, layout } = time('clock and checks', () => {
    const grounded = groundTake(schedule, { samples, sampleRate: schedule.sampleRate }, null);
    if (isTrouble(grounded)) throw new Error(grounded.sentence);
    arrivalFromMarks(grounded.audio.samples, grounded.ground.clock, schedule);
    readNoiseFloor(grounded.audio.samples, schedule.sampleRate, grounded.ground, null);
    return grounded;
  });
  const { clock, checks } = ground;
  const responder = createResponder(audio.samples, clock, schedule);
  const frame = {
    reference: null,
    departure: null,
    referenceDistanceMetres: 2.4,
    metresPerSecond: speedOfSound(20),
  };
  for (const [index, segment] of schedule.segments.entries()) {
    const channel = layout.channels.find(({ label }) => label === segment.channel);
    const check = checks[index];
    if (!channel || !check) throw new Error(`segment ${index} has no channel`);
    const [response, noise] = time('responses', () => [
      responder.respond(segment),
      responder.noise(segment),
    ]);
    const { ir, long, sweep } = response;
    time('other sound', () => inspectSweep({ segment, check }, { respond: () => response }));
    const source = { long, silence: noise, sweeps: 1, sweep, damaged: false };
    const distortion = time('distortion', () => readDistortion(source));
    const isSub = channel.kind === 'sub';
    const fit = (): unknown => readRolloffOf(rolloffBands(ir, noise), isSub);
    const before = took['roll-off'];
    time('roll-off', fit);
    const fitted = took['roll-off'] - before;
    const given = { channel, ir, noise, ...check, mendedHz: null, notes: [], distortion };
    time('the rest', () => readChannel(given, frame));
    // The roll-off is read within as well.
    took['the rest'] -= fitted;
    took.total -= fitted;
  }
  return took;
}
