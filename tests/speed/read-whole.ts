import { readTake } from '../../src/reading/read-take';
import type { ReadingHelper } from '../../src/reading/read-together';
import type { Readings } from '../../src/reading/reading';
import { isTrouble } from '../../src/trouble';
import type { SpeedTake } from './make-take';

/** A whole reading by this thread and its helpers; `core` counts this thread's and theirs. */
export async function readWhole(
  { schedule, samples }: SpeedTake,
  helpers: readonly ReadingHelper[] = [],
): Promise<{ clock: number; core: number; readings: Readings }> {
  const used = process.cpuUsage();
  const start = performance.now();
  const readings = await readTake(
    schedule,
    { samples, sampleRate: schedule.sampleRate },
    { temperatureCelsius: 20, referenceDistanceMetres: 2.4, simulated: true, helpers },
  );
  const clock = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(used);
  if (isTrouble(readings)) throw new Error(readings.sentence);
  return { clock, core: (user + system) / 1e6, readings };
}
