import { spawnSync } from 'node:child_process';
import { makeTake, writeTake } from './make-take';
import type { Memory } from './memory-child';

/** A reading may hold so many times the bytes of the capture it is given, beside it. */
const limit = 3;
const layouts = ['5.2.4', '9.1.6'];

/** Reads takes in processes of their own and says what they held at most; the problems. */
export async function measureMemory(folder: string, child: string): Promise<string[]> {
  const problems: string[] = [];
  console.log('\nMemory of a reading on one thread, MB beside the capture, first in its process:');
  console.log('           capture   at most    ratio  (process, garbage and code too)');
  for (const layout of layouts) {
    const own = `${folder}/memory-${layout}`;
    writeTake(own, await makeTake(layout));
    const { capture, most } = inChild(child, own, true);
    const { resident } = inChild(child, own, false);
    const cells = [capture / 2 ** 20, most / 2 ** 20, most / capture].map((value) =>
      value.toFixed(1).padStart(8),
    );
    console.log(`${layout.padEnd(10)}${cells.join('  ')}  ${(resident / 2 ** 20).toFixed(0)}`);
    if (most > limit * capture) {
      problems.push(
        `a reading of ${layout} holds ${(most / capture).toFixed(1)} times the capture; the limit is ${limit}`,
      );
    }
  }
  return problems;
}

function inChild(child: string, folder: string, collect: boolean): Memory {
  const run = spawnSync(
    process.execPath,
    ['--expose-gc', child, folder, collect ? 'collect' : 'leave'],
    { encoding: 'utf8' },
  );
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout) as Memory;
}
