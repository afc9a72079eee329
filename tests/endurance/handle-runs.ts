import type { CDPSession, Page } from 'playwright-core';
import { openPracticeApp, runPracticeTake } from '../journey/practice-app';

/** Tasks of the page's main thread while one thing was done, milliseconds. */
export interface HandleRow {
  readonly what: string;
  readonly tasks: number;
  /** The longest by the time it had a core, and by the clock, which counts waiting for one. */
  readonly cpu: number;
  readonly clock: number;
}

export interface HandleRun {
  readonly curves: number;
  readonly rows: readonly HandleRow[];
}

interface TraceEvent {
  readonly ph: string;
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

const seats = 6;

/**
 * The workbench with a curve for each of six seats in the practice room: drags its crossover, moves
 * it by keys and moves the subs in time, then drags both handles of a processor whose sub low-pass
 * can be set, and measures every task of the page meanwhile.
 */
export async function runHandles(): Promise<HandleRun> {
  const app = await openPracticeApp();
  try {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    await page.goto(`${app.address}#probe/take`);
    for (let seat = 1; seat <= seats; seat++) await takeAt(page, seat);
    await page.evaluate(() => (location.hash = '#propose/crossovers'));
    await page.waitForFunction(
      () => document.querySelector('ll-app')?.bench?.state.proposal?.sums === 'there',
      null,
      { timeout: 60_000 },
    );
    const eachSeat = page.getByRole('button', { name: 'Each seat', exact: true });
    if ((await eachSeat.getAttribute('aria-pressed')) !== 'true') await eachSeat.click();
    await page.locator('path[data-name="at Seat 2"]').waitFor();
    const handle = page.locator('[data-handle=crossover]');
    const curves = await page.locator('ll-workbench-chart path[data-name]').count();
    const session = await context.newCDPSession(page);
    const rows: HandleRow[] = [];
    const measure = async (what: string, act: () => Promise<void>): Promise<void> => {
      // Once to warm up: the first time of everything is the browser compiling it.
      await act();
      rows.push({ what, ...(await tasksDuring(session, act)) });
    };
    await measure('drag', () => drag(page, 'crossover'));
    await measure('keys', async () => {
      await handle.focus();
      for (let n = 0; n < 6; n++) await press(page, n % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
    });
    await measure('subs in time', async () => {
      await page.locator('ll-step-slider input').focus();
      for (let n = 0; n < 6; n++) await press(page, n % 2 === 0 ? 'ArrowRight' : 'ArrowLeft');
    });
    await chooseProcessor(page);
    await measure('drag, fine steps', () => drag(page, 'crossover'));
    await measure('drag low-pass', () => drag(page, 'low-pass'));
    return { curves, rows };
  } finally {
    await app.close();
  }
}

async function takeAt(page: Page, seat: number): Promise<void> {
  if (seat > 1) {
    await page.evaluate((number) => {
      document
        .querySelector('ll-app')
        ?.bench?.setPosition({ name: `Seat ${number}`, kind: 'seat' });
    }, seat);
  }
  await runPracticeTake(page);
}

/** One with fine steps and a sub low-pass of its own. */
async function chooseProcessor(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = '#patch/sheet'));
  await page.getByRole('button', { name: /^Sixteen outputs/ }).click();
  await page.waitForFunction(() => document.querySelector('ll-app')?.bench?.state.document.sheet);
  await page.evaluate(() => (location.hash = '#propose/crossovers'));
  await settled(page);
  await page.locator('[data-handle=low-pass]').waitFor();
}

/** There and back over the plot, a step of the pointer a frame. */
async function drag(page: Page, id: string): Promise<void> {
  const box = await page.locator(`[data-handle=${id}]`).boundingBox();
  if (!box) throw new Error(`there is no handle ${id}`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let n = 1; n <= 60; n++) await page.mouse.move(x + 120 * Math.sin(n / 5), y);
  await page.mouse.up();
  await settled(page);
}

/** As a finger does: a key stays down for a while. */
async function press(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key, { delay: 80 });
  await settled(page);
}

async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const state = document.querySelector('ll-app')?.bench?.state;
    return state?.proposal?.sums === 'there' && state.saved === 'saved';
  });
}

/** Tasks of the page's main thread while something is done. */
export async function tasksDuring(
  session: CDPSession,
  act: () => Promise<void>,
): Promise<Omit<HandleRow, 'what'>> {
  const events: TraceEvent[] = [];
  const collect = ({ value }: { value: unknown[] }): void =>
    void events.push(...(value as TraceEvent[]));
  session.on('Tracing.dataCollected', collect);
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel'] },
  });
  await new Promise((resolve) => setTimeout(resolve, 500));
  await act();
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await complete;
  session.off('Tracing.dataCollected', collect);
  const mains = events
    .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
    .map(({ pid, tid }) => `${pid} ${tid}`);
  const tasks = events.filter(
    ({ ph, name, pid, tid }) =>
      ph === 'X' && name.endsWith('RunTask') && mains.includes(`${pid} ${tid}`),
  );
  const most = (pick: (event: TraceEvent) => number): number =>
    tasks.reduce((longest, event) => Math.max(longest, pick(event) / 1000), 0);
  return {
    tasks: tasks.length,
    cpu: most(({ tdur = 0 }) => tdur),
    clock: most(({ dur = 0 }) => dur),
  };
}
