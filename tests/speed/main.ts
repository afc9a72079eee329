/**
 * npm run speed [-- scipy | scaling | memory]
 *
 * How long it takes to read a take of 11 speakers at 48 kHz against a SciPy program that does the
 * same work on the same take (scipy/), step by step on one core and whole on all of them, in one
 * run; how the time grows with speakers and length; how much memory a reading takes. Fails beyond
 * the limits stated in these files, or when the two do not read the same. The code is bundled
 * first, as it is for the app.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { bundleForNode } from '../bundle-for-node';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const folder = here('../.out/speed');
await bundleForNode(here('.'), `${folder}/bundle`, {
  bench: here('./bench.ts'),
  helper: here('./helper-thread.ts'),
  'memory-child': here('./memory-child.ts'),
});
const ran = spawnSync(
  process.execPath,
  [`${folder}/bundle/bench.js`, folder, here('./scipy/read_take.py'), ...process.argv.slice(2)],
  { stdio: 'inherit' },
);
process.exitCode = ran.status ?? 1;
