import { chromium, type Browser, type Page } from 'playwright-core';
import { serveApp } from './serve-app';

/** The built app, served as `npm start` serves it, in a browser without speakers or microphone. */
export interface PracticeApp {
  readonly browser: Browser;
  readonly address: string;
  /** Leaves the browser alone with what it has. */
  stopServer(): Promise<void>;
  close(): Promise<void>;
}

/** `folder` holds another build than the one of `npm run build`. */
export async function openPracticeApp(folder?: string): Promise<PracticeApp> {
  const server = await serveApp(folder);
  const browser = await chromium.launch({
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      // Texts are looked for as they are in Britain, wherever the machine stands.
      '--accept-lang=en-GB',
    ],
  });
  return {
    browser,
    address: server.address,
    stopServer: () => server.close(),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

/** Warnings, errors and requests to elsewhere, as they come; an honest page has none. */
export function listenForComplaints(page: Page, address: string): string[] {
  const heard: string[] = [];
  page.on('console', (message) => {
    const kind = message.type();
    if (kind === 'warning' || kind === 'error') heard.push(`${kind}: ${message.text()}`);
  });
  page.on('pageerror', (error) => heard.push(`page error: ${error.message}`));
  page.on('requestfailed', (request) => {
    // A reload drops what the page before it still wanted; that is no failure.
    const why = request.failure()?.errorText ?? '';
    if (why !== 'net::ERR_ABORTED') heard.push(`request failed: ${request.url()} (${why})`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(blob|data):/.test(url)) heard.push(`request to ${url}`);
  });
  return heard;
}

/** Runs the practice take that is on offer and waits until it is read. */
export async function runPracticeTake(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Run the take/ }).click();
  const idle = page.getByText('Nothing is playing', { exact: true });
  await idle.waitFor({ state: 'hidden', timeout: 10_000 });
  await idle.waitFor({ timeout: 200_000 });
}
