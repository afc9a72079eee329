import { readdirSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { copyBuild, type BuildCopy } from './another-build';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';

let copy: BuildCopy | null = null;
let app: PracticeApp | null = null;

afterEach(async () => {
  await app?.close();
  copy?.remove();
  app = copy = null;
});

interface Visit {
  readonly app: PracticeApp;
  readonly copy: BuildCopy;
  readonly page: Page;
  readonly complaints: string[];
}

/** The first visit, until the browser has kept the app. */
async function visit(): Promise<Visit> {
  copy = copyBuild();
  app = await openPracticeApp(copy.folder);
  const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  const complaints = listenForComplaints(page, app.address);
  await page.goto(app.address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(async () => {
    const { serviceWorker } = navigator;
    await serviceWorker.ready;
    if (serviceWorker.controller) return;
    await new Promise((resolve) =>
      serviceWorker.addEventListener('controllerchange', resolve, { once: true }),
    );
  });
  return { app, copy, page, complaints };
}

/** Runs a take in the practice room and goes to what it proposes. */
async function proposeFromTake(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Probe', exact: false }).first().click();
  await runPracticeTake(page);
  await page.getByRole('link', { name: 'Propose', exact: false }).first().click();
  await page.getByRole('heading', { level: 1, name: /cross over at \d+\sHz/ }).waitFor();
}

/** Every stage of the rail, and the sheets that are loaded by themselves. */
const stages = ['plan', 'patch', 'probe/inspect', 'propose', 'prove', 'prove/handover'] as const;

/** Waits until a stage is drawn by the element that belongs to it. */
async function stageOnScreen(page: Page, stage: string): Promise<void> {
  const [name = '', sheet] = stage.split('/');
  const drawn = sheet === undefined ? `ll-${name}` : `ll-${name} ll-${sheet}-sheet`;
  await page.locator(`main[aria-busy="false"] ${drawn}:defined`).waitFor({ state: 'attached' });
  await page.getByRole('heading', { level: 1 }).waitFor();
}

/** Goes to every stage; what is drawn of it comes from the part of the app that belongs to it. */
async function visitStages(page: Page): Promise<void> {
  for (const stage of stages) {
    await page.evaluate((hash) => (location.hash = hash), stage);
    await stageOnScreen(page, stage);
  }
}

/** Everything a build wrote that the app may ask for. */
function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .filter((name) => !/^service-worker\.js$|^leadline\.png$|\.woff$|^\.vite\//.test(name));
}

describe('after the first load, with the network gone', () => {
  it('opens on a reload and runs a practice take, with every file at hand', async () => {
    const { app, copy, page, complaints } = await visit();
    await app.stopServer();
    await expect(fetch(app.address)).rejects.toThrow();

    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    await visitStages(page);
    await page.evaluate(() => (location.hash = 'probe/take'));
    await proposeFromTake(page);
    await visitStages(page);
    const missing = await page.evaluate(async (names) => {
      const answers = names.map(async (name) => ((await fetch(name)).ok ? [] : [name]));
      return (await Promise.all(answers)).flat();
    }, filesOf(copy.folder));
    expect(missing).toEqual([]);

    await page.getByRole('button', { name: 'Sessions', exact: true }).click();
    await page.getByText('Kept in this browser: it opens without the network.').waitFor();
    expect(complaints).toEqual([]);
  });

  it('does without the reload as well', async () => {
    const { app, page, complaints } = await visit();
    await app.stopServer();
    await proposeFromTake(page);
    await visitStages(page);
    expect(complaints).toEqual([]);
  });

  it('begins at any stage', async () => {
    const { app, page, complaints } = await visit();
    await app.stopServer();
    for (const stage of stages) {
      await page.goto(`${app.address}#${stage}`);
      await page.reload();
      await stageOnScreen(page, stage);
    }
    expect(complaints).toEqual([]);
  });
});

describe('a newer version', () => {
  it('waits until it is wanted, then shows itself and keeps the session', async () => {
    const { copy, page, complaints } = await visit();
    await page.getByLabel('Session name').fill('Garden room');
    await page.keyboard.press('Enter');
    await page.getByText('Saved in this browser').waitFor();

    copy.rename('feedf00d');
    await lookForNewer(page);
    await page.getByText('A new version is ready.').waitFor();
    expect(await versionShown(page)).toContain(copy.build);

    // A reload of one's own is no wish for it.
    await page.reload();
    expect(await versionShown(page)).toContain(copy.build);

    await page.getByRole('button', { name: 'Load the new version' }).click();
    await page.getByRole('button', { name: 'Load the new version' }).waitFor({ state: 'hidden' });
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await versionShown(page)).toContain('feedf00d');
    expect(await page.getByLabel('Session name').inputValue()).toBe('Garden room');
    expect(complaints).toEqual([]);
  });

  it('is kept whole or not at all', async () => {
    const { copy, page } = await visit();
    // As while a server changes over: the new worker is there, the page it lists is not yet.
    copy.rename('feedf00d');
    copy.spoilPage();
    expect(await lookForNewer(page)).toBe('redundant');
    expect(await page.evaluate(() => caches.keys())).toEqual([`leadline-build-${copy.build}`]);
    expect(await page.getByText('A new version is ready.').count()).toBe(0);
  });
});

/** Has the browser look for a newer version now; gives how that ended. */
function lookForNewer(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    const newer = registration.installing ?? registration.waiting;
    if (!newer) return 'nothing newer';
    while (newer.state === 'installing') {
      await new Promise((resolve) =>
        newer.addEventListener('statechange', resolve, { once: true }),
      );
    }
    return newer.state;
  });
}

async function versionShown(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Sessions', exact: true }).click();
  const said = await page.locator('ll-version p').innerText();
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  return said;
}
