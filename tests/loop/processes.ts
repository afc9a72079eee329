import { spawn, type ChildProcess, type SpawnOptions } from 'node:child_process';

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

/** The command with real-time priority where this user may ask for it, else plain. */
export function withPriority(command: string, args: readonly string[]): [string, string[]] {
  if (process.getuid?.() !== 0) return [command, [...args]];
  return ['chrt', ['-f', '20', command, ...args]];
}
