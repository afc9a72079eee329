import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type BrowserContext, type Page } from 'playwright-core';
import { trackProcesses } from '../loop/processes';
import { startChromium } from './chromium-endpoint';
import { listenForComplaints } from './practice-app';
import { raiseAudio } from './raise-audio';
import { serveApp } from './serve-app';

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
  const server = await serveApp();
  const profile = options.profile ?? (await mkdtemp(path.join(tmpdir(), 'leadline-profile-')));
  const processes = trackProcesses();
  try {
    const { address } = server;
    const { child, endpoint } = await startChromium(processes, {
      profile,
      environment: options.environment,
      // Fewer and larger buffers: the machine that runs this is small and shared.
      args: ['--audio-buffer-size=2048'],
    });
    raiseAudio(child);
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
