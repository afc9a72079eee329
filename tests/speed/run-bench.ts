import { speedOfSound } from '../../dsp/level/speed-of-sound';
import { checkCapture } from '../../src/reading/check-capture';
import { createResponder } from '../../src/reading/impulse-responses';
import { matchClock } from '../../src/reading/match-clock';
import { readChannel } from '../../src/reading/read-channel';
import { readTake } from '../../src/reading/read-take';
import type { Readings } from '../../src/reading/reading';
import { layoutFromName } from '../../src/system/layout';
import { isTrouble } from '../../src/trouble';
import type { SpeedTake } from './make-take';
import type { StageSeconds } from './run-scipy';

/** Seconds of one whole reading, and what was read. */
export async function timeReading({
  schedule,
  samples,
}: SpeedTake): Promise<{ seconds: number; readings: Readings }> {
  const start = performance.now();
  const readings = await readTake(
    schedule,
    { samples, sampleRate: schedule.sampleRate },
    { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: true },
  );
  const seconds = (performance.now() - start) / 1000;
  if (isTrouble(readings)) throw new Error(readings.sentence);
  return { seconds, readings };
}

/** Seconds of the stages of a reading, one after the other; the total is theirs alone. */
export function timeStages({ schedule, samples }: SpeedTake): StageSeconds {
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  const start = performance.now();
  const audio = { samples: Float64Array.from(samples), sampleRate: schedule.sampleRate };
  const matched = matchClock(audio, schedule);
  if (isTrouble(matched)) throw new Error(matched.sentence);
  const checks = checkCapture(audio, matched.clock, schedule);
  const clocked = performance.now();
  const { respond, noise } = createResponder(audio.samples, matched.clock, schedule);
  const sources = schedule.segments.map((segment) => ({
    ir: respond(segment).ir,
    noise: noise(segment),
  }));
  const responded = performance.now();
  const frame = {
    reference: null,
    departure: null,
    referenceDistanceMetres: 2.4,
    metresPerSecond: speedOfSound(20),
  };
  for (const [index, source] of sources.entries()) {
    const channel = layout.channels.find(
      ({ label }) => label === schedule.segments[index]?.channel,
    );
    const check = checks.segments[index];
    if (!channel || !check) throw new Error(`segment ${index} has no channel`);
    readChannel({ channel, ...source, ...check, mendedHz: null, notes: [] }, frame);
  }
  const done = performance.now();
  const seconds = (from: number, to: number): number => (to - from) / 1000;
  return {
    clock: seconds(start, clocked),
    responses: seconds(clocked, responded),
    channels: seconds(responded, done),
    total: seconds(start, done),
  };
}
