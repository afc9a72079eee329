import type { Locator, Page } from 'playwright-core';

/** A person with one way to reach what is on screen. */
export interface Hands {
  /** Presses a link or button by its accessible name. */
  press(role: 'link' | 'button', name: string | RegExp): Promise<void>;
  /** Chooses one of a few exclusive choices. */
  choose(name: string): Promise<void>;
  /** Answers the ear check: the key of an answer, and the button that says it. */
  answer(key: string, button: RegExp): Promise<void>;
  /** Points at a speaker of the ear check: its place in wiring order, and its mark on the plan. */
  point(number: number, onPlan: Locator): Promise<void>;
}

/** Only the keyboard: Tab to what has a name, then the key that works it. */
export function keyboard(page: Page): Hands {
  return {
    async press(role, name) {
      await page.getByRole(role, { name, exact: true }).first().waitFor();
      await tabTo(page, name);
      await page.keyboard.press('Enter');
    },
    async choose(name) {
      await tabTo(page, /^\d\.\d/);
      for (let pressed = 0; pressed < 12; pressed++) {
        if ((await focusedName(page)) === name) {
          await page.keyboard.press('Space');
          return;
        }
        await page.keyboard.press('ArrowRight');
      }
      throw new Error(`no arrow leads to ${name}`);
    },
    answer: (key) => page.keyboard.press(key),
    async point(number) {
      await page.keyboard.type(String(number));
      await page.keyboard.press('Enter');
    },
  };
}

/** Only the mouse: scrolls to a thing, then presses in its middle. */
export function mouse(page: Page): Hands {
  const click = async (thing: Locator): Promise<void> => {
    await thing.waitFor();
    await thing.scrollIntoViewIfNeeded();
    const box = await thing.boundingBox();
    if (!box) throw new Error('what is to be clicked has no place on screen');
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  };
  return {
    press: (role, name) => click(page.getByRole(role, { name, exact: true }).first()),
    choose: (name) => click(page.getByRole('radio', { name, exact: true })),
    answer: (_, button) => click(page.getByRole('button', { name: button })),
    point: (_, onPlan) => click(onPlan),
  };
}

/** Presses Tab until what has the focus is called so; fails when the focus comes round. */
export async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const seen: string[] = [];
  for (let pressed = 0; pressed < 150; pressed++) {
    const here = await focusedName(page);
    if (typeof name === 'string' ? here === name : name.test(here)) return;
    seen.push(here);
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never reached ${String(name)}, only: ${[...new Set(seen)].join(' | ')}`);
}

/** What the focused thing is called, through all open shadow roots; its key hints left out. */
function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const label = at instanceof HTMLInputElement ? at.labels?.[0] : null;
    const words = at?.getAttribute('aria-label') ?? label?.textContent ?? at?.textContent ?? '';
    return words.replace(/\s+/g, ' ').trim();
  });
}
