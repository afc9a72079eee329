import { surroundRoom } from '../loop/rooms';
import { withLiveSession } from './live-session';
import { fullBand } from './noise-runs';

/** What a long run of live noise does to the page. */
export interface LongNoise {
  readonly minutes: number;
  /** Heap of the page after collection, megabytes, each minute. */
  readonly heap: readonly number[];
  readonly nodes: readonly number[];
  /** Tasks of the main thread over 50 ms, by their length in ms. */
  readonly longTasks: readonly number[];
  readonly warnings: readonly string[];
  readonly ended: string | null;
}

/** Plays full-band noise with its spectrum on screen for so long and watches the page. */
export async function runLongNoise(minutes: number): Promise<LongNoise> {
  return withLiveSession(surroundRoom, '7.1', async ({ page, begin, state, complaints }) => {
    await page.evaluate(() => (location.hash = '#probe/noise'));
    await page.evaluate(() => {
      const lengths: number[] = [];
      Object.assign(window, { lengthsOfLongTasks: lengths });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) lengths.push(entry.duration);
      }).observe({ type: 'longtask' });
    });
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
      await metrics.send('HeapProfiler.collectGarbage');
      const { metrics: values } = await metrics.send('Performance.getMetrics');
      const value = (name: string): number => values.find((one) => one.name === name)?.value ?? 0;
      heap.push(value('JSHeapUsedSize') / 2 ** 20);
      nodes.push(value('Nodes'));
      const now = await state();
      if (now.activity.kind === 'noise') warnings = now.activity.noise.warnings;
      else ended = now.trouble?.sentence ?? 'it ended by itself';
      console.log(`${heap.length} min: heap ${heap.at(-1)?.toFixed(1)} MB, ${nodes.at(-1)} nodes`);
    }
    const longTasks = await page.evaluate(
      () => (window as unknown as { lengthsOfLongTasks: number[] }).lengthsOfLongTasks,
    );
    await page.keyboard.press('Escape');
    if (complaints.length > 0) throw new Error(complaints.join('\n'));
    return { minutes: heap.length, heap, nodes, longTasks, warnings, ended };
  });
}
