import type { BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { headingOf } from './headings';
import { openPracticeApp, type PracticeApp } from './practice-app';

let app: PracticeApp;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  app = await openPracticeApp();
});
afterEach(() => context.close());
afterAll(() => app.close());

/** A browser that keeps nothing, so that every part of the app has to come from the server. */
async function openPage(): Promise<void> {
  context = await app.browser.newContext({ serviceWorkers: 'block' });
  page = await context.newPage();
}

function rail(stage: string): Locator {
  return page.locator('ll-rail').getByRole('link', { name: stage });
}

const propose = /\/assets\/propose-stage-[^/]+\.js$/;

describe('a stage that does not load', () => {
  it('says so in its place, and comes when it is tried again', async () => {
    await openPage();
    await page.route(propose, (route) => route.abort());
    await page.goto(`${app.address}#plan`);
    await headingOf(page, /^This room has/);

    await rail('Propose').click();
    await headingOf(page, 'Propose could not be loaded');
    await page.getByRole('alert').getByText('did not load').waitFor();
    expect(await page.title()).toBe('Propose · Leadline');
    await page.getByRole('button', { name: 'Try again' }).click();
    await headingOf(page, 'Propose could not be loaded');

    // The others go on working meanwhile.
    await rail('Patch').click();
    await headingOf(page, 'Which processor feeds the speakers?');
    await rail('Propose').click();
    await headingOf(page, 'Propose could not be loaded');

    await page.unroute(propose);
    await page.getByRole('button', { name: 'Try again' }).click();
    await headingOf(page, 'No settings yet');
  });

  it('says so as well when the page begins with it', async () => {
    await openPage();
    await page.route(propose, (route) => route.abort());
    await page.goto(`${app.address}#propose`);
    await headingOf(page, 'Propose could not be loaded');
    await page.unroute(propose);
    await page.getByRole('button', { name: 'Reload the page' }).click();
    await headingOf(page, 'No settings yet');
  });
});

describe('a stage that is long on its way', () => {
  it('leaves the one before in its place until it can be shown whole', async () => {
    await openPage();
    let release: () => void = () => undefined;
    const held = new Promise<void>((resolve) => (release = resolve));
    await page.route(propose, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(`${app.address}#plan`);
    await headingOf(page, /^This room has/);

    await rail('Propose').click();
    await page.locator('main[aria-busy="true"]').waitFor();
    await headingOf(page, /^This room has/);
    await rail('Propose').and(page.locator('[aria-current]')).waitFor();

    release();
    await headingOf(page, 'No settings yet');
    await page.locator('main[aria-busy="false"]').waitFor();
    expect(await page.locator('ll-plan').count()).toBe(0);
  });
});
