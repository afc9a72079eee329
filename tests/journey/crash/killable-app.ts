import { mkdtemp, rm } from 'node:fs/promises';
import type { ChildProcess } from 'node:child_process';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { trackProcesses, type Processes } from '../../loop/processes';
import { startChromium } from '../chromium-endpoint';
import { listenForComplaints } from '../practice-app';
import { serveApp } from '../serve-app';
import { crashPage } from './crash-page';

/** How a page is killed: only its own process, or the whole browser at once. */
export type Killing = 'page' | 'browser';

/** The page of the app as it is open now. */
export interface OpenPage {
  readonly page: Page;
  readonly complaints: readonly string[];
}

/** The built app in a browser that keeps its profile and can be killed. */
export interface KillableApp {
  /** Opens the app in a new tab, in the browser that still runs or in a new one. */
  open(): Promise<OpenPage>;
  /** Kills what is open, as a crash does, and waits until it is gone. */
  kill(killing: Killing): Promise<void>;
}

interface Running {
  readonly child: ChildProcess;
  readonly browser: Browser;
}

/** Serves the app, lends it, and cleans up after. */
export async function withKillableApp<T>(use: (app: KillableApp) => Promise<T>): Promise<T> {
  const server = await serveApp();
  const profile = await mkdtemp(path.join(tmpdir(), 'leadline-crash-'));
  const processes = trackProcesses();
  let running: Running | null = null;
  let page: Page | null = null;

  try {
    return await use({
      async open() {
        running ??= await start(processes, profile);
        const [context] = running.browser.contexts();
        if (!context) throw new Error('Chromium opened no window.');
        page = await context.newPage();
        // Under tsx, functions that are handed to the page call this to keep their names.
        await page.addInitScript('globalThis.__name = (one) => one;');
        const complaints = listenForComplaints(page, server.address);
        await page.goto(server.address);
        return { page, complaints };
      },
      async kill(killing) {
        const { child, browser } = running ?? {};
        if (!child || !browser || !page) throw new Error('nothing is open that could be killed');
        if (killing === 'page') return crash(page);
        running = null;
        const gone = new Promise((resolve) => browser.once('disconnected', resolve));
        const ended = new Promise((resolve) => child.once('exit', resolve));
        child.kill('SIGKILL');
        await Promise.all([gone, ended]);
      },
    });
  } finally {
    await (running as Running | null)?.browser.close();
    await processes.endAll();
    await server.close();
    await rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
  }
}

/** Ends the page's process where it stands, then closes the tab that is left of it. */
async function crash(page: Page): Promise<void> {
  await crashPage(page);
  await page.close();
}

async function start(processes: Processes, profile: string): Promise<Running> {
  const { child, endpoint } = await startChromium(processes, { profile });
  const browser = await chromium.connectOverCDP(endpoint);
  const session = await browser.newBrowserCDPSession();
  await session.send('Browser.setDownloadBehavior', {
    behavior: 'allow',
    downloadPath: path.join(profile, 'downloads'),
  });
  return { child, browser };
}
