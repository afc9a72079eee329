import { fileURLToPath } from 'node:url';
import { compareWithScipy } from './against-scipy';
import { measureMemory } from './memory';
import { showScaling } from './scaling';

/** What main bundles and starts: FOLDER SCRIPT, then what to measure; all without any. */
const [folder = '', script = '', ...wanted] = process.argv.slice(2);
const runs: Readonly<Record<string, () => Promise<string[]>>> = {
  scipy: () => compareWithScipy(folder, script, new URL('./helper.js', import.meta.url)),
  scaling: showScaling,
  memory: () => measureMemory(folder, fileURLToPath(new URL('./memory-child.js', import.meta.url))),
};
const problems: string[] = [];
for (const name of wanted.length > 0 ? wanted : Object.keys(runs)) {
  const run = runs[name];
  if (!run) throw new RangeError(`there is no “${name}”: ${Object.keys(runs).join(', ')}`);
  problems.push(...(await run()));
}
for (const problem of problems) console.log(`PROBLEM: ${problem}`);
process.exitCode = problems.length > 0 ? 1 : 0;
