import { availableParallelism } from 'node:os';
import { compareReadings } from './compare-readings';
import { makeTake, writeTake } from './make-take';
import { readWhole } from './read-whole';
import { runScipy } from './run-scipy';
import { steps, timeSteps, type Seconds } from './steps';
import { helpersInThreads } from './threads';

/** A reading must take less time than SciPy's. */
const limit = 1;
/** The best of so many rounds of so many runs of either, by turns. */
const rounds = 6;
const runsOfRound = 4;

/** What the other reader leaves out that a reading of ours does. */
const leftOut = [
  'putting lost audio right (this take lost none), and guessing at which rate a capture was made',
  'names of what else sounds in a sweep, and every sentence',
];

/** Reads one take by turns here and with SciPy, on one core and on all; the problems it shows. */
export async function compareWithScipy(folder: string, script: string, helper: URL) {
  const take = await makeTake('5.2.4');
  writeTake(folder, take);
  const cores = availableParallelism();
  const seconds = take.samples.length / take.schedule.sampleRate;
  const speakers = take.schedule.channels.length;
  console.log(`A take of ${speakers} speakers, ${seconds.toFixed(0)} s, 48 kHz; ${cores} cores`);
  const { helpers, end } = helpersInThreads(helper, cores - 1);
  const { clock: first, readings } = await readWhole(take, helpers);
  for (let n = 0; n < 3; n++) await readWhole(take, helpers);
  const ours: Seconds[] = [timeSteps(take)];
  const theirs: Seconds[] = [];
  const whole: number[] = [];
  const wholeTheirs: number[] = [];
  const problems: string[] = [];
  // By turns, so that whatever else the machine does meets both.
  for (let round = 0; round < rounds; round++) {
    for (let n = 0; n < runsOfRound; n++) whole.push((await readWhole(take, helpers)).clock);
    for (let n = 0; n < 2; n++) ours.push(timeSteps(take));
    const one = runScipy(script, folder, 3, 1);
    const all = runScipy(script, folder, runsOfRound, cores);
    if (!one || !all) {
      await end();
      return ['SciPy is not installed (python3-scipy): there is nothing to compare with.'];
    }
    theirs.push(...one.runs);
    wholeTheirs.push(...all.runs.map(({ total }) => total));
    if (round > 0) continue;
    const differences = compareReadings(readings, one.reading, take.schedule.sampleRate);
    problems.push(...differences.map((what) => `not read the same: ${what}`));
  }
  await end();
  console.log('                        ours    SciPy    ratio   (seconds of one core, best)');
  for (const step of [...steps, 'total'] as const) {
    const best = (all: readonly Seconds[]): number => Math.min(...all.map((one) => one[step]));
    printRow(step, best(ours), best(theirs));
  }
  const [best, bestTheirs] = [Math.min(...whole), Math.min(...wholeTheirs)];
  printRow(`whole, ${cores} cores`, best, bestTheirs);
  console.log(`The first reading of a process takes ${first.toFixed(2)} s.`);
  console.log('The SciPy script leaves out:');
  for (const what of leftOut) console.log(`  ${what}`);
  if (best > limit * bestTheirs) {
    problems.push(
      `a reading takes ${(best / bestTheirs).toFixed(2)} times SciPy's time; the limit is ${limit}`,
    );
  }
  return problems;
}

function printRow(name: string, ours: number, theirs: number): void {
  const cells = [ours, theirs, ours / theirs].map((value) => value.toFixed(3).padStart(8));
  console.log(`${name.padEnd(20)}${cells.join(' ')}`);
}
