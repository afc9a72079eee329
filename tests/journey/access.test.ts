import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessFaults } from './access-faults';
import { chartFaults } from './chart-faults';
import { everyFault } from './every-fault';
import { focusFaults } from './focus-faults';
import { motions } from './motions';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';
import { settled, showScreen, sizes, stages } from './screens';

const [desk, , , zoomed] = sizes;

let app: PracticeApp;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  app = await openPracticeApp();
  page = await app.browser.newPage();
  complaints = listenForComplaints(page, app.address);
});
afterAll(() => app.close());

describe('the look-outs', () => {
  const bad = [
    ['a button without a name', '<button></button>', accessFaults, 'button-name'],
    ['faint text', '<p style="color:#aaa;background:#fff">words</p>', accessFaults, 'contrast'],
    [
      'faint text inside a shadow root',
      '<div><template shadowrootmode="open"><p style="color:#aaa">words</p></template></div>',
      accessFaults,
      'contrast',
    ],
    [
      'a stop that hides its focus',
      '<button style="outline:none">one</button>',
      focusFaults,
      'button “one” shows no focus',
    ],
    [
      'a stop that is out of sight',
      '<button style="position:fixed;top:-90px">one</button>',
      focusFaults,
      'out of sight',
    ],
    [
      'a control that Tab never reaches',
      '<button tabindex="-1">one</button><a href="#">two</a>',
      focusFaults,
      'never reaches button “one”',
    ],
    [
      'a chart without numbers',
      '<div><template shadowrootmode="open"><svg width="300" height="200"></svg></template></div>',
      chartFaults,
      'nothing tells the svg of div',
    ],
  ] as const;
  for (const [what, body, faults, said] of bad) {
    it(`see ${what}`, async () => {
      await page.goto('about:blank');
      await page.setContent(
        `<!doctype html><html lang="en"><title>one</title><body>${body}</body></html>`,
      );
      expect((await faults(page)).join('\n')).toContain(said);
    });
  }
});

describe('a take that plays', () => {
  beforeAll(async () => {
    await showScreen(page, app.address, 'plan', 'light', desk);
    await page.getByRole('radio', { name: '3.1', exact: true }).check();
    await showScreen(page, app.address, 'probe/take', 'light', desk);
    await page.getByRole('button', { name: /^Run the take/ }).click();
    await page.locator('.speaker.playing').first().waitFor();
  });
  afterAll(async () => {
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    await page.keyboard.press('Escape');
    await page.getByText('Nothing is playing', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Understood' }).click();
  });

  it('moves on the plan', async () => {
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    await expect.poll(() => motions(page)).toContain('sound');
  });

  it('moves nowhere for who wants less motion', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.locator('.speaker.playing').first().waitFor();
    expect(await motions(page)).toEqual([]);
  });

  it('has no fault on screen', async () => {
    expect(await everyFault(page)).toEqual([]);
  });
});

describe('a take that was stopped', () => {
  it('says so without fault', async () => {
    await showScreen(page, app.address, 'probe/take', 'light', desk);
    await page.getByRole('button', { name: /^Run the take/ }).click();
    await page.locator('.speaker.playing').first().waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Understood' }).waitFor();
    expect(await everyFault(page)).toEqual([]);
    await page.getByRole('button', { name: 'Understood' }).click();
  });
});

describe('noise that plays', () => {
  afterAll(async () => {
    await page.keyboard.press('Escape');
    await page.getByText('Nothing is playing', { exact: true }).waitFor();
  });

  it('is drawn, and told in numbers, without fault', async () => {
    await showScreen(page, app.address, 'probe/noise', 'light', desk);
    await page.getByRole('button', { name: /^Play noise on/ }).click();
    const numbers = page.getByText('Numbers behind this chart');
    await numbers.click();
    await page.getByRole('region', { name: /^Spectrum of FL in bands/ }).waitFor();
    expect(await everyFault(page)).toEqual([]);
  });
});

describe('after a take', () => {
  beforeAll(async () => {
    await showScreen(page, app.address, 'probe/take', 'light', desk);
    await runPracticeTake(page);
  });

  for (const view of ['Distortion', 'Phase and delay', 'Time', 'Decay', 'Bass decay']) {
    it(`the view ${view} of the sound has no fault`, async () => {
      await showScreen(page, app.address, 'probe/inspect', 'light', desk);
      await page.getByRole('radio', { name: view, exact: true }).check();
      await settled(page);
      expect(await everyFault(page)).toEqual([]);
    });
  }

  it('the sessions have no fault', async () => {
    await showScreen(page, app.address, 'plan', 'light', desk);
    await page.getByRole('button', { name: 'Sessions' }).click();
    await page.getByRole('dialog').waitFor();
    expect(await everyFault(page)).toEqual([]);
    await page.getByRole('button', { name: 'Close' }).click();
  });

  for (const stage of stages) {
    it(`Tab goes through ${stage} at 200 % zoom, in sight`, async () => {
      await showScreen(page, app.address, stage, 'light', zoomed);
      expect(await focusFaults(page)).toEqual([]);
    });
  }
});

describe('all of it', () => {
  it('was shown without a warning, an error or a request to elsewhere', () => {
    expect(complaints).toEqual([]);
  });
});
