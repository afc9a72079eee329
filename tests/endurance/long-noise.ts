import { surroundRoom } from '../loop/rooms';
import { withLiveSession } from './live-session';
import { fullBand } from './noise-runs';

/** What a long run of live noise does to the page. */
export interface LongNoise {
  readonly minutes: number;
  /** Heap of the page after collection, megabytes, each minute. */
  readonly heap: readonly number[];
  readonly nodes: readonly number[];
  /** Tasks of the main thread over 50 ms, but for the collections that this run itself asks for. */
  readonly longTasks: readonly LongTask[];
  readonly warnings: readonly string[];
  readonly ended: string | null;
}

/** Milliseconds; `start` from the beginning of the noise. */
export interface LongTask {
  readonly start: number;
  readonly length: number;
}

/** Plays full-band noise with its spectrum on screen for so long and watches the page. */
export async function runLongNoise(minutes: number): Promise<LongNoise> {
  return withLiveSession(surroundRoom, '7.1', async ({ page, begin, state, complaints }) => {
    await page.evaluate(() => (location.hash = '#probe/noise'));
    await page.evaluate(() => {
      const tasks: LongTask[] = [];
      const began = performance.now();
      Object.assign(window, { longTasks: tasks, noiseBegan: began });
      new PerformanceObserver((list) => {
        for (const { startTime, duration } of list.getEntries()) {
          tasks.push({ start: startTime - began, length: duration });
        }
      }).observe({ type: 'longtask' });
    });
    /** The page's own clock, milliseconds from the beginning. */
    const clock = (): Promise<number> =>
      page.evaluate(
        () => performance.now() - (window as unknown as { noiseBegan: number }).noiseBegan,
      );
    const collections: (readonly [number, number])[] = [];
    await begin({ noise: fullBand('FL', 30) });
    const metrics = await page.context().newCDPSession(page);
    await metrics.send('Performance.enable');
    const heap: number[] = [];
    const nodes: number[] = [];
    const started = Date.now();
    let ended: string | null = null;
    let warnings: readonly string[] = [];
    while (ended === null && Date.now() - started < minutes * 60_000) {
      await new Promise((resolve) => setTimeout(resolve, 60_000));
      const from = await clock();
      await metrics.send('HeapProfiler.collectGarbage');
      collections.push([from, await clock()]);
      const { metrics: values } = await metrics.send('Performance.getMetrics');
      const value = (name: string): number => values.find((one) => one.name === name)?.value ?? 0;
      heap.push(value('JSHeapUsedSize') / 2 ** 20);
      nodes.push(value('Nodes'));
      const now = await state();
      if (now.activity.kind === 'noise') warnings = now.activity.noise.warnings;
      else ended = now.trouble?.sentence ?? 'it ended by itself';
      console.log(`${heap.length} min: heap ${heap.at(-1)?.toFixed(1)} MB, ${nodes.at(-1)} nodes`);
    }
    const tasks = await page.evaluate(
      () => (window as unknown as { longTasks: LongTask[] }).longTasks,
    );
    const longTasks = tasks.filter(
      ({ start, length }) => !collections.some(([from, to]) => start < to && start + length > from),
    );
    await page.keyboard.press('Escape');
    if (complaints.length > 0) throw new Error(complaints.join('\n'));
    return { minutes: heap.length, heap, nodes, longTasks, warnings, ended };
  });
}

/** Such as “62 ms at 14.1 s”, one after the other. */
export function sayTasks(tasks: readonly LongTask[]): string {
  return tasks
    .map(({ start, length }) => `${Math.round(length)} ms at ${(start / 1000).toFixed(1)} s`)
    .join(', ');
}
