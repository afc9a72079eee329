import { execFile, spawn, type ChildProcess, type SpawnOptions } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** Processes this run started; each is ended by its own id and no other ever is. */
export interface Processes {
  start(command: string, args: readonly string[], options: SpawnOptions): ChildProcess;
  /** Ends one of them and waits until it is gone. */
  end(child: ChildProcess): Promise<void>;
  /** Ends all, last started first. */
  endAll(): Promise<void>;
}

/** An empty list of processes; whatever still runs when this process ends is ended too. */
export function trackProcesses(): Processes {
  const running = new Set<ChildProcess>();
  const atExit = (): void => {
    for (const child of running) child.kill('SIGKILL');
  };
  process.once('exit', atExit);

  const end = async (child: ChildProcess): Promise<void> => {
    if (!running.has(child)) return;
    const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
    child.kill('SIGTERM');
    const late = setTimeout(() => child.kill('SIGKILL'), 3000);
    await gone;
    clearTimeout(late);
  };
  return {
    start(command, args, options) {
      const child = spawn(command, args, options);
      running.add(child);
      child.once('exit', () => running.delete(child));
      child.once('error', () => running.delete(child));
      return child;
    },
    end,
    async endAll() {
      for (const child of [...running].reverse()) await end(child);
      process.removeListener('exit', atExit);
    },
  };
}

/** How urgent a process of the loop is: the real-time policy and its priority. */
export type Urgency = readonly ['fifo' | 'round robin', number];

/**
 * Gives all threads of a process real-time priority; only root may ask for it. Once it runs: what
 * starts urgent may wait for a process that is not, and let it have no core.
 */
export async function raise(pid: number | undefined, [policy, priority]: Urgency): Promise<void> {
  if (process.getuid?.() !== 0 || pid === undefined) return;
  const flag = policy === 'fifo' ? '-f' : '-r';
  await run('chrt', ['-a', flag, '-p', String(priority), String(pid)]);
}

/** Ids of the processes that a process started and that still run. */
export function childrenOf(pid: number): number[] {
  return readdirSync(`/proc/${pid}/task`).flatMap((thread) =>
    readFileSync(`/proc/${pid}/task/${thread}/children`, 'utf8')
      .split(' ')
      .filter((id) => id !== '')
      .map(Number),
  );
}
