import { runCrashes } from '../journey/crash/run-crashes';
import { comparePinkAndSweep } from './noise-runs';
import { runFaults } from './fault-runs';
import { runHandles } from './handle-runs';
import { runLongNoise, sayTasks } from './long-noise';
import { runReadings } from './reading-runs';
import { runTakes, type TakeRow } from './take-runs';
import { runSlips } from './slip-runs';
import { runWalks } from './walk-runs';

/*
 * npm run endurance [-- takes N | skew | faults [NAME] | pink | walk FROM TO [OUTPUTS] |
 * slips RUNS FIRST | noise MINUTES | crash KILLS SEED | handles | reading LAYOUT TAKES]
 *
 * Long runs of the built app in the closed audio loop, on a machine that does nothing else; prints
 * tables and fails when a number is wrong and nothing says so. Build first.
 */
const problems: string[] = [];

async function takes(count: number, skewPpm?: number): Promise<void> {
  console.log('take  skew ppm  worst mm  level dB  f10 in  outcome');
  const rows = await runTakes(count, skewPpm);
  for (const { take, wrong } of rows) {
    if (wrong.length > 0) problems.push(`take ${take}: ${wrong.join(', ')}`);
  }
  const covered = rows.reduce((sum, row) => sum + row.covered[0], 0);
  const judged = rows.reduce((sum, row) => sum + row.covered[1], 0);
  const whole = rows.filter((row: TakeRow) => row.outcome === 'whole').length;
  console.log(`${whole} of ${rows.length} whole; f10 in its interval ${covered} of ${judged}`);
}

const runs: Readonly<Record<string, (words: readonly string[]) => Promise<void>>> = {
  takes: ([count = '20']) => takes(Number(count)),
  async skew() {
    for (const ppm of [-100, 100]) {
      console.log(`microphone clock ${ppm} ppm off`);
      await takes(3, ppm);
    }
  },
  async faults([name]) {
    for (const row of await runFaults(name ?? null)) {
      if (!row.passes) problems.push(`${row.name}: mended ${row.mended} ${row.wrong.join(', ')}`);
    }
  },
  async pink() {
    console.log('channel  worst dB   at Hz  level dB  sweep level dB');
    for (const row of await comparePinkAndSweep()) {
      const { channel, worstDb, worstHz, levelErrorDb, sweepLevelErrorDb } = row;
      console.log(
        `${channel.padEnd(8)} ${worstDb.toFixed(3).padStart(8)} ${worstHz.toFixed(0).padStart(7)} ${levelErrorDb.toFixed(3).padStart(9)} ${sweepLevelErrorDb.toFixed(3).padStart(9)}`,
      );
      if (!(worstDb <= 0.2)) problems.push(`${channel}: pink and sweep ${worstDb.toFixed(2)} dB`);
      for (const error of [levelErrorDb, sweepLevelErrorDb]) {
        if (!(Math.abs(error) <= 0.05))
          problems.push(`${channel}: level ${error.toFixed(3)} dB off`);
      }
    }
  },
  /** With fewer outputs than the ten speakers the plugs are moved on the way. */
  async walk([from = '0', to = '60', outputs = '10']) {
    const rows = await runWalks(Number(from), Number(to), Number(outputs));
    const right = rows.filter((row) => row.right).length;
    console.log(`${right} of ${rows.length} walks told right`);
    if (right < rows.length) problems.push(`${rows.length - right} walks told wrong`);
  },
  /** In the practice room: no loop. */
  async reading([layout = '5.2.4', count = '3']) {
    console.log('the longest task in ms from the button to the proposal:');
    for (const { what, tasks, cpu, clock } of await runReadings(layout, Number(count))) {
      console.log(
        `${what.padEnd(14)} ${cpu.toFixed(1).padStart(6)} on a core, ${clock.toFixed(1)} by the clock, of ${tasks}`,
      );
      if (what !== 'take 1' && cpu > 16) problems.push(`${what}: a task of ${cpu.toFixed(1)} ms`);
    }
  },
  /** The first two houses with every mistake, or those of a name; the others typed right alone. */
  async slips([count = '10', first = '0', only]) {
    const [from, runs] = [Number(first), Number(count)];
    const rows = await runSlips({ from, to: from + runs, slipsBelow: 2, only });
    const right = rows.filter(({ slip }) => slip === null);
    const slips = rows.filter(({ slip }) => slip !== null);
    const good = (some: typeof rows): number =>
      some.filter(({ wrong }) => wrong.length === 0).length;
    console.log(
      `typed right: ${good(right)} of ${right.length} pass in all lines; typed wrong: ${good(slips)} of ${slips.length} failed and named`,
    );
    for (const { house, slip, wrong } of rows) {
      if (wrong.length > 0) problems.push(`${house}, ${slip ?? 'typed right'}: ${wrong.join(' ')}`);
    }
  },
  async handles() {
    const { curves, rows } = await runHandles();
    console.log(`${curves} curves; the longest task in ms:`);
    for (const { what, tasks, cpu, clock } of rows) {
      console.log(
        `${what.padEnd(16)} ${cpu.toFixed(1).padStart(6)} on a core, ${clock.toFixed(1)} by the clock, of ${tasks}`,
      );
      if (cpu > 16) problems.push(`${what}: a task of ${cpu.toFixed(1)} ms`);
    }
    if (curves < 12) problems.push(`only ${curves} curves were drawn`);
  },
  /** In the practice room: no loop, and no machine of its own. */
  async crash([kills = '20', seed = '1']) {
    await runCrashes({ kills: Number(kills), seed: Number(seed), say: console.log });
    console.log('nothing was lost');
  },
  async noise([minutes = '30']) {
    const run = await runLongNoise(Number(minutes));
    const growth = (run.heap.at(-1) ?? 0) - (run.heap[Math.min(2, run.heap.length - 1)] ?? 0);
    console.log(
      `${run.minutes} min; heap grew ${growth.toFixed(2)} MB; long tasks: ${sayTasks(run.longTasks) || 'none'}; warnings: ${run.warnings.join(' ') || 'none'}`,
    );
    if (run.ended !== null) problems.push(`the noise ended: ${run.ended}`);
    if (growth > 2) problems.push(`the heap grew by ${growth.toFixed(1)} MB`);
    if (run.longTasks.length > 0) problems.push(`${run.longTasks.length} tasks over 50 ms`);
    if (run.warnings.length > 0) problems.push(run.warnings.join(' '));
  },
};

const [name = 'all', ...words] = process.argv.slice(2);
const chosen = name === 'all' ? Object.keys(runs) : [name];
for (const each of chosen) {
  const run = runs[each];
  if (!run) throw new RangeError(`there is no run “${each}”: ${Object.keys(runs).join(', ')}`);
  console.log(`\n${each}`);
  await run(words);
}
for (const problem of problems) console.error(problem);
process.exitCode = problems.length === 0 ? 0 : 1;
