import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { preview } from 'vite';
import { trackProcesses, type Processes } from '../loop/processes';
import { listenForComplaints } from './practice-app';
import { raiseAudio } from './raise-audio';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The built app in a Chromium as a person runs it: nothing emulated, nothing muted. */
export interface LiveApp {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Warnings, errors, unhandled rejections and requests to elsewhere, as they come. */
  readonly complaints: readonly string[];
}

export interface LiveAppOptions {
  /** Tells Chromium where its audio server is. */
  readonly environment: NodeJS.ProcessEnv;
  readonly microphone: 'allowed' | 'refused';
  /** Keeps the browser's storage here, for another start; else it is thrown away. */
  readonly profile?: string;
}

/** Serves the built app, opens it in a fresh profile on the Probe stage, and cleans up after. */
export async function withLiveApp<T>(
  options: LiveAppOptions,
  use: (app: LiveApp) => Promise<T>,
): Promise<T> {
  if (!existsSync(`${root}dist/index.html`)) {
    throw new Error('The journeys run on the built app: npm run build first.');
  }
  const server = await preview({
    root,
    logLevel: 'error',
    preview: { host: '127.0.0.1', port: 5361, strictPort: false },
  });
  const profile = options.profile ?? (await mkdtemp(path.join(tmpdir(), 'leadline-profile-')));
  const processes = trackProcesses();
  try {
    const address = server.resolvedUrls?.local[0];
    if (address === undefined) throw new Error('The preview server has no address.');
    const endpoint = await startChromium(processes, profile, options.environment);
    // Playwright's own defaults keep every page visible and focused; a hidden page must be hidden.
    const browser = await chromium.connectOverCDP(endpoint, { noDefaults: true });
    const [context] = browser.contexts();
    const page = context?.pages()[0];
    if (!context || !page) throw new Error('Chromium opened no page.');
    await setMicrophonePermission(context, page, new URL(address).origin, options.microphone);
    const complaints = listenForComplaints(page, address);
    await page.goto(`${address}#plan`);
    try {
      return await use({ context, page, complaints });
    } finally {
      await browser.close();
    }
  } finally {
    await processes.endAll();
    await server.close();
    if (options.profile === undefined) {
      await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    }
  }
}

/** Playwright mutes what it launches itself, so Chromium is started here; gives its endpoint. */
async function startChromium(
  processes: Processes,
  profile: string,
  environment: NodeJS.ProcessEnv,
): Promise<string> {
  const executable = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
  const child = processes.start(
    executable,
    [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--window-size=1440,900',
      // Fewer and larger buffers: the machine that runs this is small and shared.
      '--audio-buffer-size=2048',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { env: environment, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  raiseAudio(child);
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

async function setMicrophonePermission(
  context: BrowserContext,
  page: Page,
  origin: string,
  answer: LiveAppOptions['microphone'],
): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send('Browser.setPermission', {
    permission: { name: 'microphone' },
    setting: answer === 'allowed' ? 'granted' : 'denied',
    origin,
  });
}
