import { execFile, type ChildProcess } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { promisify } from 'node:util';

const run = promisify(execFile);

/**
 * Gives the threads of a browser's audio process the priority that the browser gives the audio
 * threads of its pages: on two cores shared with the loop they otherwise wait too long now and then.
 * Only as root; looks again every second, since streams bring new threads. Ends with the browser.
 */
export function raiseAudio(browser: ChildProcess): void {
  if (process.getuid?.() !== 0) return;
  const timer = setInterval(() => void raise(browser).catch(() => undefined), 1000);
  browser.once('exit', () => clearInterval(timer));
}

async function raise({ pid }: ChildProcess): Promise<void> {
  if (pid === undefined) return;
  const children = readdirSync(`/proc/${pid}/task`).flatMap((thread) =>
    readFileSync(`/proc/${pid}/task/${thread}/children`, 'utf8').split(' '),
  );
  for (const child of children.filter((id) => id !== '')) {
    if (!readFileSync(`/proc/${child}/cmdline`, 'utf8').includes('utility-sub-type=audio'))
      continue;
    await run('chrt', ['-a', '-r', '-p', '8', child]);
  }
}
