import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessFaults } from './access-faults';
import { chartFaults } from './chart-faults';
import {
  listenForComplaints,
  openPracticeApp,
  runPracticeTake,
  type PracticeApp,
} from './practice-app';
import { screenFaults } from './screen-faults';
import { showScreen, sizes, stages, themes, type Size, type Theme } from './screens';
import { unfolded } from './unfold';

const pictures = fileURLToPath(new URL('../.out/screens/', import.meta.url));
const inTree = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
/** Pictures of the README: what each shows, and where it is kept. */
const guide = [
  ['plan', 'tests/pictures/plan.png'],
  ['probe/take', 'tests/pictures/take.png'],
  ['propose/crossovers', 'public/leadline.png'],
  ['propose/list', 'tests/pictures/list.png'],
  ['prove/handover', 'tests/pictures/handover.png'],
] as const;

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

const desk = sizes[0];

function show(stage: string, theme: Theme, size: Size): Promise<void> {
  return showScreen(page, app.address, stage, theme, size);
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

/** What stands on the page now says all of it to everyone. */
async function expectAccess(theme: Theme): Promise<void> {
  expect(await screenFaults(page), `${theme} theme, unfolded`).toEqual([]);
  expect(await chartFaults(page), `${theme} theme`).toEqual([]);
  expect(await accessFaults(page), `${theme} theme`).toEqual([]);
}

/** Every screen in both themes; with `access` for who uses it in other ways as well. */
function eachScreen(
  when: string,
  names: readonly string[] = sizes.map(({ name }) => name),
  access = true,
): void {
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
          if (size === desk && access) await unfolded(page, () => expectAccess(theme));
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
  eachScreen('before a take', ['desk', 'phone'], false);
});

describe('the screens after a take', () => {
  beforeAll(async () => {
    await show('probe/take', 'light', desk);
    await runPracticeTake(page);
  });

  eachScreen('after a take');

  it.each(guide)('make the picture of %s for the README when asked', async (stage, kept) => {
    await show(stage, 'light', desk);
    const asked = process.env['README_PICTURES'] !== undefined;
    const path = asked ? inTree(kept) : `${pictures}readme-${stage.replace('/', '-')}.png`;
    const picture = await page.screenshot({ path });
    expect(picture.byteLength).toBeLessThan(250_000);
  });
});

describe('the screens of the largest layout', () => {
  beforeAll(async () => {
    await show('plan', 'light', desk);
    await page.getByRole('radio', { name: '9.4.6' }).check();
    await page.getByRole('heading', { level: 1, name: /nine speakers/ }).waitFor();
  });

  eachScreen('of 19 speakers', ['desk', 'phone'], false);
});

describe('every screen', () => {
  it('was shown without a warning, an error or a request to elsewhere', () => {
    expect(complaints).toEqual([]);
  });
});
