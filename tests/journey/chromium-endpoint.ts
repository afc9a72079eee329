import type { ChildProcess } from 'node:child_process';
import type { Processes } from '../loop/processes';

export interface ChromiumOptions {
  readonly profile: string;
  /** Beside what every browser of a journey is started with. */
  readonly args?: readonly string[];
  readonly environment?: NodeJS.ProcessEnv;
}

/** A Chromium that was started here and answers at an endpoint. */
export interface StartedChromium {
  readonly child: ChildProcess;
  readonly endpoint: string;
}

/** Playwright mutes what it launches itself, and ends it its own way: this starts Chromium plainly. */
export async function startChromium(
  processes: Processes,
  { profile, args = [], environment = process.env }: ChromiumOptions,
): Promise<StartedChromium> {
  const child = processes.start(
    process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--accept-lang=en-GB',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--window-size=1440,900',
      ...args,
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { env: environment, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  return { child, endpoint: await endpointOf(child) };
}

function endpointOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr?.on('data', (data: Buffer) => {
      said += data.toString();
      const endpoint = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (endpoint !== undefined) resolve(endpoint);
    });
    child.once('exit', () => reject(new Error(`Chromium ended:\n${said}`)));
  });
}
