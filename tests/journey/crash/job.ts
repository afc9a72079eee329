import type { Page } from 'playwright-core';
import { headingOf } from '../headings';
import { benchState } from '../live-app';
import type { Ledger } from './ledger';
import { sessionToImport } from './session-to-import';

/** Where a job is done: the page as it is open now, and the ledger of what it said. */
export interface Workplace {
  readonly page: Page;
  readonly ledger: Ledger;
  /** How often a session was begun, from 1; the names of what is made carry it. */
  readonly round: number;
}

/** One thing that a person does; done again as a whole when it was cut off. */
export interface JobStep {
  readonly name: string;
  /** Whether it begins a new round. */
  readonly begins?: boolean;
  /** Whether it is left out where only a few moments are tried. */
  readonly leftOut?: boolean;
  do(place: Workplace): Promise<void>;
}

const roomOf = (round: number): string => `Room ${round}`;

/** A whole job in the practice room, step by step. */
export const job: readonly JobStep[] = [
  {
    name: 'begin a session',
    begins: true,
    leftOut: true,
    async do({ page, round }) {
      await openSessions(page);
      await page.getByRole('button', { name: 'New session', exact: true }).click();
      await page.locator('ll-sessions-panel dialog').waitFor({ state: 'hidden' });
      await page.getByLabel('Session name', { exact: true }).fill(roomOf(round));
      await page.keyboard.press('Enter');
      await goTo(page, 'plan');
      await page.getByRole('radio', { name: '3.1', exact: true }).check();
      await untilSaved(page);
    },
  },
  {
    name: 'run a take',
    async do({ page }) {
      await goTo(page, 'probe/take');
      const { takes } = (await benchState(page)).document;
      await page.getByRole('button', { name: /^Run the take/ }).click();
      await page.waitForFunction((before) => {
        const state = document.querySelector('ll-app')?.bench?.state;
        const read = state?.document.takes.every(({ readings }) => readings !== null);
        return read && state?.activity.kind === 'idle' && state.document.takes.length > before;
      }, takes.length);
      await untilSaved(page);
    },
  },
  {
    name: 'move a crossover',
    async do({ page }) {
      await goTo(page, 'propose/crossovers');
      const slider = page.getByRole('slider', { name: 'Crossover of Fronts' });
      await slider.press('ArrowRight');
      await slider.press('ArrowLeft');
      await slider.press('ArrowRight');
      await headingOf(page, /^Fronts (are set to|cross over at)/);
      await untilSaved(page);
    },
  },
  {
    name: 'tick the list',
    async do({ page }) {
      await goTo(page, 'propose/list');
      const lines = page.locator('label[data-line] input:not([disabled])');
      await lines.first().waitFor();
      // A value that still changes takes its tick back.
      await page.waitForFunction(
        () => document.querySelector('ll-app')?.bench?.state.proposal?.sums === 'there',
      );
      for (let line = 0; line < (await lines.count()); line++) await lines.nth(line).check();
      await untilSaved(page);
    },
  },
  {
    name: 'save a file',
    leftOut: true,
    async do({ page }) {
      await openSessions(page);
      await page.getByRole('button', { name: 'Save this session as a file' }).click();
      await untilSaved(page);
      await closeSessions(page);
    },
  },
  {
    name: 'open a file',
    async do({ page, round }) {
      await openSessions(page);
      const { name, buffer } = await sessionToImport(round);
      const file = { name, buffer, mimeType: 'application/zip' };
      await page.getByLabel('Session file', { exact: true }).setInputFiles(file);
      await page.locator('ll-sessions-panel dialog').waitFor({ state: 'hidden' });
      await onBench(page, `Import ${round}`);
      await untilSaved(page);
    },
  },
  {
    name: 'go back to the room, delete what was opened, and bring it back',
    async do({ page, ledger, round }) {
      await openSessions(page);
      if ((await benchState(page)).document.name !== roomOf(round)) {
        await page.getByRole('button', { name: `Open: ${roomOf(round)}`, exact: true }).click();
        await onBench(page, roomOf(round));
        await page.locator('ll-sessions-panel dialog').waitFor({ state: 'hidden' });
        await openSessions(page);
      }
      const remove = page.getByRole('button', { name: `Delete: Import ${round}`, exact: true });
      // A crash after the deletion, before the bringing back, makes it final, as is said there.
      const back = page.getByRole('button', { name: `Bring back: Import ${round}`, exact: true });
      await page.locator(`[data-session="${await idOnBench(page)}"]`).waitFor();
      if ((await remove.count()) > 0) {
        ledger.mayGo(`imported ${round}`);
        await remove.click();
        await back.click();
        await remove.waitFor();
        await untilSaved(page);
        ledger.stays(`imported ${round}`);
      }
      await closeSessions(page);
    },
  },
  {
    name: 'delete what was opened, with its sound',
    async do({ page, ledger, round }) {
      await openSessions(page);
      await page.locator(`[data-session="${await idOnBench(page)}"]`).waitFor();
      const remove = page.getByRole('button', { name: `Delete: Import ${round}`, exact: true });
      const final = page.getByRole('button', { name: `Remove for good: Import ${round}` });
      ledger.mayGo(`imported ${round}`);
      if ((await remove.count()) > 0) {
        await remove.click();
        await final.click();
        await final.waitFor({ state: 'detached' });
      }
      await untilSaved(page);
      await closeSessions(page);
    },
  },
];

async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), hash);
  await headingOf(page, /./);
}

async function openSessions(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Sessions', exact: true }).click();
  await page.locator('ll-session-row').first().waitFor();
}

async function closeSessions(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Close', exact: true }).click();
}

async function idOnBench(page: Page): Promise<string> {
  return (await benchState(page)).document.id;
}

async function onBench(page: Page, name: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => document.querySelector('ll-app')?.bench?.state.document.name === wanted,
    name,
  );
}

/** Waits until nothing runs and all is saved. */
export async function untilSaved(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const state = document.querySelector('ll-app')?.bench?.state;
    return state?.activity.kind === 'idle' && !state.sessions.file && state.saved === 'saved';
  });
}
