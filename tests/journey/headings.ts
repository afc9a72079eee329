import type { Page } from 'playwright-core';

/** Waits for the stage to say this. */
export function headingOf(page: Page, name: string | RegExp): Promise<void> {
  return page.getByRole('heading', { level: 1, name }).waitFor();
}

/** Exactly this text, for a filter. */
export function hasText(text: string): RegExp {
  return new RegExp(`^${text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
}
