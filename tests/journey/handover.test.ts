import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { everyFault } from './every-fault';
import { headingOf } from './headings';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';

const papers = fileURLToPath(new URL('../.out/handover/', import.meta.url));

let app: PracticeApp;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  mkdirSync(papers, { recursive: true });
  app = await openPracticeApp();
  page = await app.browser.newPage({ viewport: { width: 1440, height: 900 } });
  complaints = listenForComplaints(page, app.address);
  await page.goto(`${app.address}#plan`);
  await page.getByRole('radio', { name: '3.1', exact: true }).check();
  await page.goto(`${app.address}#probe/take`);
  await runPracticeTake(page);
});
afterAll(() => app.close());

async function prove(button: RegExp): Promise<void> {
  await page.goto(`${app.address}#prove/proof`);
  await page.getByRole('button', { name: button }).click({ timeout: 60_000 });
  const idle = page.getByText('Nothing is playing', { exact: true });
  await idle.waitFor({ state: 'hidden', timeout: 10_000 });
  await idle.waitFor({ timeout: 200_000 });
}

/** How many pages a PDF has, by its page tree. */
function pagesOf(pdf: Buffer): number {
  const counts = [...pdf.toString('latin1').matchAll(/\/Count (\d+)/g)];
  return Math.max(...counts.map(([, count]) => Number(count)));
}

describe('a system of the practice room', () => {
  it('passes when it is typed as proposed', async () => {
    await prove(/^Prove$/);
    await headingOf(page, /^(All \d+ lines hold|No line fails)/);
    expect(await everyFault(page)).toEqual([]);
  });

  it.each(['A4', 'Letter'])('is handed over on one page of %s', async (format) => {
    await page.goto(`${app.address}#prove/handover`);
    await headingOf(page, /^What is left behind/);
    const pdf = await page.pdf({ format });
    writeFileSync(`${papers}${format}.pdf`, pdf);
    expect(pagesOf(pdf)).toBe(1);
  });

  it('is handed over on a screen without fault', async () => {
    await page.goto(`${app.address}#prove/handover`);
    await headingOf(page, /^What is left behind/);
    expect(await everyFault(page)).toEqual([]);
  });

  it('fails when something is mistyped, and passes once it is right', async () => {
    await page.goto(`${app.address}#probe/take`);
    const mistype = page.getByRole('checkbox', { name: 'Mistype something' });
    // Half way through what may be drawn; a test must not be drawn itself.
    await page.evaluate(() => {
      Math.random = () => 0.5;
    });
    await mistype.check();
    await prove(/^Prove all again$/);
    await headingOf(page, /lines? fails?/);
    expect(await everyFault(page)).toEqual([]);
    await page.goto(`${app.address}#probe/take`);
    await mistype.uncheck();
    await prove(/^Prove all again$/);
    await headingOf(page, /^(All \d+ lines hold|No line fails)/);
  });

  it('is shown without a warning, an error or a request to elsewhere', () => {
    expect(complaints).toEqual([]);
  });
});
