import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';
import { screenFaults } from './screen-faults';

const pictures = fileURLToPath(new URL('../.out/screens/', import.meta.url));
const readmePicture = fileURLToPath(new URL('../../public/leadline.png', import.meta.url));

const sizes = [
  { name: 'desk', width: 1440, height: 900 },
  { name: 'tablet', width: 1024, height: 768 },
  { name: 'phone', width: 390, height: 844 },
  // A 1440 by 900 window at 200 % zoom.
  { name: 'zoomed', width: 720, height: 450 },
] as const;
const stages = [
  'plan',
  'patch',
  'patch/wiring',
  'patch/ear',
  'patch/walk',
  'patch/in-force',
  'probe/connect',
  'probe/microphone',
  'probe/level',
  'probe/take',
  'probe/noise',
  'probe/inspect',
  'propose/crossovers',
  'propose/subs',
  'propose/bass',
  'propose/compare',
  'propose/list',
  'propose/equaliser',
  'prove/proof',
  'prove/handover',
  'prove/visits',
] as const;
const themes = ['light', 'dark'] as const;

let app: PracticeApp;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  app = await openPracticeApp();
  page = await app.browser.newPage();
  complaints = listenForComplaints(page, app.address);
  await page.goto(app.address);
});
afterAll(() => app.close());

async function show(
  stage: string,
  theme: 'light' | 'dark',
  size: (typeof sizes)[number],
): Promise<void> {
  await page.setViewportSize(size);
  await page.emulateMedia({ colorScheme: theme });
  await page.goto(`${app.address}#${stage}`);
  await page.evaluate(() => document.fonts.ready);
  await page.getByText('Being computed').waitFor({ state: 'detached', timeout: 60_000 });
  // Two frames: one in which sizes are observed, one in which they are drawn.
  await page.evaluate(
    () =>
      new Promise((done) =>
        requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done))),
      ),
  );
  await page.getByText('Being worked out').waitFor({ state: 'detached', timeout: 60_000 });
}

/** The mark of the practice room is in the window wherever the page is scrolled to. */
async function expectMarkAtBothEnds(): Promise<void> {
  for (const end of [100_000, 0]) {
    await page.evaluate((top) => {
      scrollTo(0, top);
    }, end);
    const height = page.viewportSize()?.height ?? 0;
    const marks = await page.locator('.simulated').all();
    const boxes = await Promise.all(marks.map((mark) => mark.boundingBox()));
    expect(boxes.some((box) => box && box.y >= 0 && box.y + box.height <= height)).toBe(true);
  }
}

function eachScreen(when: string, names: readonly string[] = sizes.map(({ name }) => name)): void {
  for (const size of sizes.filter(({ name }) => names.includes(name))) {
    for (const stage of stages) {
      it(`shows ${stage} on ${size.name} ${when} without fault in either theme`, async () => {
        for (const theme of themes) {
          await show(stage, theme, size);
          await expectMarkAtBothEnds();
          expect(await page.getByRole('button', { name: 'Stop all sound' }).isVisible()).toBe(true);
          await page.screenshot({
            path: `${pictures}${stage.replace('/', '-')}-${size.name}-${theme}-${when.replaceAll(' ', '-')}.png`,
            fullPage: size.width < 900,
          });
          expect(await screenFaults(page), `${theme} theme`).toEqual([]);
        }
      });
    }
  }
}

describe('the look-out for faults', () => {
  const bad = [
    [
      'text over other text',
      '<p>one</p><p style="margin-top:-32px">two</p>',
      '“one” lies over “two”',
    ],
    [
      'text that overflows',
      '<p style="width:40px;white-space:nowrap">a long sentence</p>',
      'overflows its box',
    ],
    [
      'text that leaves the window',
      '<p style="margin-left:98vw;width:200px">words</p>',
      'leaves the window',
    ],
    ['a number that is none', '<p>at NaN Hz</p>', 'says “at NaN Hz”'],
    [
      'a fault inside a shadow root',
      '<div><template shadowrootmode="open">undefined</template></div>',
      'says',
    ],
  ] as const;
  for (const [what, body, said] of bad) {
    it(`sees ${what}`, async () => {
      const other = await app.browser.newPage();
      await other.setContent(`<!doctype html><body>${body}</body>`);
      expect((await screenFaults(other)).join('\n')).toContain(said);
      await other.close();
    });
  }

  it('sees none where there is none', async () => {
    const other = await app.browser.newPage();
    await other.setContent('<!doctype html><body><p>one</p><p>two</p></body>');
    expect(await screenFaults(other)).toEqual([]);
    await other.close();
  });
});

describe('the screens before a take', () => {
  eachScreen('before a take', ['desk', 'phone']);
});

describe('the screens after a take', () => {
  beforeAll(async () => {
    await show('probe/take', 'light', sizes[0]);
    await runPracticeTake(page);
  });

  eachScreen('after a take');

  it('make the picture of the README when asked', async () => {
    await show('propose/crossovers', 'light', sizes[0]);
    const path =
      process.env['README_PICTURE'] === undefined ? `${pictures}readme.png` : readmePicture;
    const picture = await page.screenshot({ path });
    expect(picture.byteLength).toBeLessThan(250_000);
  });
});

describe('the screens of the largest layout', () => {
  beforeAll(async () => {
    await show('plan', 'light', sizes[0]);
    await page.getByRole('radio', { name: '9.4.6' }).check();
    await page.getByRole('heading', { level: 1, name: /nine speakers/ }).waitFor();
  });

  eachScreen('of 19 speakers', ['desk', 'phone']);
});

describe('every screen', () => {
  it('was shown without a warning, an error or a request to elsewhere', () => {
    expect(complaints).toEqual([]);
  });
});
