/**
 * How long it takes to read a take of 11 speakers at 48 kHz, against a SciPy program that does the
 * same work on the same take (read_take.py), both on one thread, in one run. Fails when a reading
 * takes more than `limit` times as long as SciPy, or when the two do not read the same.
 */
import { fileURLToPath } from 'node:url';
import { compareReadings } from './compare-readings';
import { makeTake } from './make-take';
import { timeReading, timeStages } from './run-bench';
import { runScipy, type StageSeconds } from './run-scipy';

const limit = 3;
const rounds = 4;

async function main(): Promise<number> {
  const folder = fileURLToPath(new URL('../.out/speed', import.meta.url));
  const take = await makeTake(folder);
  const seconds = take.samples.length / take.schedule.sampleRate;
  console.log(
    `A take of ${take.schedule.segments.length} speakers, ${seconds.toFixed(0)} s, 48 kHz`,
  );
  const { seconds: first, readings } = await timeReading(take);
  const whole: number[] = [];
  const stages: StageSeconds[] = [];
  const scipy: StageSeconds[] = [];
  const differences: string[] = [];
  // By turns, so that whatever else the machine does meets both.
  for (let round = 0; round < rounds; round++) {
    whole.push((await timeReading(take)).seconds);
    stages.push(timeStages(take));
    const other = runScipy(folder, 2);
    if (!other) {
      console.log('SciPy is not installed (python3-scipy): there is nothing to compare with.');
      return 1;
    }
    scipy.push(...other.runs);
    if (round === 0) {
      differences.push(...compareReadings(readings, other.reading, take.schedule.sampleRate));
    }
  }
  printTable(stages, scipy);
  const best = Math.min(...whole);
  const bestOfScipy = Math.min(...scipy.map(({ total }) => total));
  const ratio = best / bestOfScipy;
  printRow('whole', best, bestOfScipy);
  console.log(`The first reading of a process takes ${first.toFixed(2)} s.`);
  for (const difference of differences) console.log(`NOT THE SAME: ${difference}`);
  console.log(`A reading takes ${ratio.toFixed(2)} times SciPy's time; the limit is ${limit}.`);
  return ratio > limit || differences.length > 0 ? 1 : 0;
}

function printTable(bench: readonly StageSeconds[], scipy: readonly StageSeconds[]): void {
  console.log(`best of ${rounds}       bench s  SciPy s    ratio`);
  for (const stage of ['clock', 'responses', 'channels'] as const) {
    const best = (all: readonly StageSeconds[]): number =>
      Math.min(...all.map((seconds) => seconds[stage]));
    printRow(stage, best(bench), best(scipy));
  }
}

function printRow(name: string, bench: number, scipy: number): void {
  const cells = [bench, scipy, bench / scipy].map((value) => value.toFixed(2).padStart(8));
  console.log(`${name.padEnd(14)}${cells.join(' ')}`);
}

process.exitCode = await main();
