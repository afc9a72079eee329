import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';
import { screenFaults } from './screen-faults';

let app: PracticeApp;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterAll(() => app.close());

/** Plans three fronts and a sub in the session on the bench and takes them, as a person does. */
async function takeFronts(page: Page, name: string): Promise<void> {
  await page.goto(`${app.address}#plan`);
  await page.getByLabel('Session name').fill(name);
  await page.getByLabel(/^Another, by its name/).fill('3.1');
  await page.keyboard.press('Enter');
  await page.goto(`${app.address}#probe/take`);
  await runPracticeTake(page);
}

async function beginSession(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Sessions' }).click();
  await page.getByRole('button', { name: 'New session', exact: true }).click();
}

describe('visits to a practice room', () => {
  it('find nothing changed, and in another room much', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1024, height: 768 } });
    const page = await context.newPage();
    const complaints = listenForComplaints(page, app.address);
    await page.goto(app.address);
    await takeFronts(page, 'Spring');
    await beginSession(page);
    await takeFronts(page, 'Autumn');

    await page.getByRole('button', { name: 'Sessions' }).click();
    await page.getByRole('button', { name: 'Compare: Spring' }).click();
    const title = page.getByRole('heading', { level: 1 });
    await title.filter({ hasText: 'Nothing is seen to have changed since “Spring”' }).waitFor();
    expect(await screenFaults(page)).toEqual([]);

    await beginSession(page);
    await page.goto(`${app.address}#probe/connect`);
    await page.getByLabel('Room number').fill('4');
    await page.keyboard.press('Enter');
    await takeFronts(page, 'Winter');
    await page.goto(`${app.address}#prove/visits`);
    await page.getByLabel('Session in this browser').selectOption({ index: 1 });
    await title.filter({ hasText: /^\d+ things? ha(s|ve) changed since “Autumn”/ }).waitFor();
    const findings = page.getByRole('list', { name: 'What changed' }).getByRole('listitem');
    expect(await findings.first().innerText()).toContain(
      'Practice room: number 4; then: number 3.',
    );
    expect(await findings.count()).toBeGreaterThan(1);
    expect(await screenFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
