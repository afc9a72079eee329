import type { Page } from 'playwright-core';

export const sizes = [
  { name: 'desk', width: 1440, height: 900 },
  { name: 'tablet', width: 1024, height: 768 },
  { name: 'phone', width: 390, height: 844 },
  // A 1440 by 900 window at 200 % zoom.
  { name: 'zoomed', width: 720, height: 450 },
] as const;
export type Size = (typeof sizes)[number];

export const themes = ['light', 'dark'] as const;
export type Theme = (typeof themes)[number];

export const stages = [
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

/** Waits until everything on the screen is computed and drawn. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await page.getByText('Being computed').waitFor({ state: 'detached', timeout: 60_000 });
  // Frames: one in which sizes are observed, one in which they are drawn.
  await page.evaluate(
    () =>
      new Promise((done) =>
        requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done))),
      ),
  );
  await page.locator('main[aria-busy="false"]').waitFor();
  await page.getByText('Being worked out').waitFor({ state: 'detached', timeout: 60_000 });
}

/** Turns the page over to a stage or sheet, in a theme and a window, and waits until it stands. */
export async function showScreen(
  page: Page,
  address: string,
  stage: string,
  theme: Theme,
  { width, height }: Size,
): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme: theme });
  await page.goto(`${address}#${stage}`);
  await settled(page);
}
