import type { ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { childrenOf, raise } from '../loop/processes';

/**
 * Gives the threads of a browser's audio process the priority that the browser gives the audio
 * threads of its pages: on two cores shared with the loop they otherwise wait too long now and then.
 * Only as root; looks again every second, since streams bring new threads. Ends with the browser.
 */
export function raiseAudio(browser: ChildProcess): void {
  if (process.getuid?.() !== 0) return;
  const timer = setInterval(() => void raiseIn(browser).catch(() => undefined), 1000);
  browser.once('exit', () => clearInterval(timer));
}

async function raiseIn({ pid }: ChildProcess): Promise<void> {
  if (pid === undefined) return;
  for (const child of childrenOf(pid)) {
    const command = readFileSync(`/proc/${child}/cmdline`, 'utf8');
    if (command.includes('utility-sub-type=audio')) await raise(child, ['round robin', 8]);
  }
}
