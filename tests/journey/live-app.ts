import type { Page } from 'playwright-core';
import type { BenchState } from '../../src/session/bench';

/** Declares the system and chooses the live rig, all by hand on screen. */
export async function chooseLive(page: Page, tapeMetres: number): Promise<void> {
  await page.getByRole('radio', { name: '5.1', exact: true }).check();
  await page.getByLabel(/^Tape distance/).fill(tapeMetres.toFixed(2));
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Probe', exact: false }).first().click();
  await page.getByRole('link', { name: 'Take', exact: true }).click();
  await page.getByRole('radio', { name: 'Live', exact: true }).check();
  await page.getByRole('link', { name: 'Level', exact: true }).click();
  for (const field of ['Never above', 'Test level']) {
    await page.getByLabel(field, { exact: true }).fill('0');
    await page.keyboard.press('Enter');
  }
  await page.getByRole('link', { name: 'Take', exact: true }).click();
}

/** Damaged speakers are repeated only when asked for. */
export async function repeatNothing(page: Page): Promise<void> {
  await page.evaluate(() => {
    document.querySelector('ll-app')?.bench?.change('Repeat nothing', (before) => ({
      ...before,
      take: { ...before.take, repeats: 0 },
    }));
  });
}

export async function clickRun(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Run the take/ }).click();
}

/** Waits until the strip says that this channel plays. */
export async function untilPlaying(page: Page, channel: string): Promise<void> {
  await page.getByText(`Playing ${channel}`, { exact: true }).waitFor({ timeout: 60_000 });
}

/** Waits until nothing plays and nothing is read any more. */
export async function untilIdle(page: Page): Promise<void> {
  await page.getByText('Nothing is playing', { exact: true }).waitFor({ timeout: 200_000 });
}

/** The sentence of the banner, empty when there is none. */
export async function bannerText(page: Page): Promise<string> {
  const banner = page.getByRole('alert').filter({ hasText: /\w/ });
  return (await banner.count()) === 0 ? '' : banner.first().locator('p').innerText();
}

/** What the app holds in hand, by its own account. */
export function benchState(page: Page): Promise<BenchState> {
  return page.evaluate(() => {
    const bench = document.querySelector('ll-app')?.bench;
    if (!bench) throw new Error('the app has no bench');
    return bench.state;
  });
}

/** Where the take is, stimulus samples; null when none plays. Light enough to ask often. */
export function playPosition(page: Page): Promise<number | null> {
  return page.evaluate(() => {
    const activity = document.querySelector('ll-app')?.bench?.state.activity;
    return activity?.kind === 'playing' ? activity.play.position : null;
  });
}

/** Cells of one line of the settings under Propose, List: distance, trim, crossover, polarity. */
export async function settingsLine(page: Page, channel: string): Promise<string[]> {
  return page.locator(`ll-settings-table tr[data-channel="${channel}"] td`).allInnerTexts();
}
