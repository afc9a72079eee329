import type { Page } from 'playwright-core';
import { accessFaults } from './access-faults';
import { chartFaults } from './chart-faults';
import { screenFaults } from './screen-faults';
import { settled, themes } from './screens';

/** Whatever is wrong with what stands on the page now, in both themes, one sentence a fault. */
export async function everyFault(page: Page): Promise<string[]> {
  const faults: string[] = [];
  for (const colorScheme of themes) {
    await page.emulateMedia({ colorScheme });
    await settled(page);
    const found = [
      ...(await screenFaults(page)),
      ...(await chartFaults(page)),
      ...(await accessFaults(page)),
    ];
    faults.push(...found.map((one) => `${colorScheme}: ${one}`));
  }
  return faults;
}
