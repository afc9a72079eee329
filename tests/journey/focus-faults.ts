import type { Page } from 'playwright-core';
import { beginWalk, lookAtStop, missedByWalk } from './focus-walk';

/** More stops than any screen has. */
const most = 400;

/**
 * What is wrong with the screen for who has only the Tab key, one sentence a fault: a stop without a
 * mark of its focus, a stop that lies under the rail or the strip, a control that Tab never reaches.
 */
export async function focusFaults(page: Page): Promise<string[]> {
  await page.evaluate(beginWalk);
  const faults: string[] = [];
  for (let pressed = 0; pressed < most; pressed++) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(lookAtStop);
    if (stop.seen) return [...faults, ...(await page.evaluate(missedByWalk))];
    faults.push(...stop.faults);
  }
  return [...faults, `Tab comes to no end after ${most} stops`];
}
