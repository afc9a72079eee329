import { beforeAll, describe, expect, it } from 'vitest';
import { satelliteRoom } from '../loop/rooms';
import { withLoop, type Loop, type RoomLevels } from '../loop/with-loop';
import { bannerText, benchState, chooseLive, clickRun, untilIdle, untilPlaying } from './live-app';
import { withLiveApp, type LiveApp } from './live-browser';

const rate = satelliteRoom.sampleRate;

/** How a take ended, and what the outputs did after. */
interface Ending {
  readonly banner: string;
  /** Speakers of the takes in the session. */
  readonly kept: readonly string[];
  /** Seconds of sound between the blow and silence, on the clock of the outputs. */
  readonly soundSeconds: number;
}

/** Asks the outputs until they do as wanted; gives up after about a minute. */
async function untilLevels(loop: Loop, wanted: (levels: RoomLevels) => boolean) {
  for (let asked = 0; asked < 3000; asked++) {
    const levels = await loop.levels();
    if (wanted(levels)) return levels;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error('the outputs never did what was waited for');
}

/** Runs a take, strikes in the middle of a sweep, and waits until the outputs have fallen silent. */
async function strike(loop: Loop, app: LiveApp, blow: () => Promise<void>): Promise<Ending> {
  await clickRun(app.page);
  await untilPlaying(app.page, 'FR');
  // Past the mark and its guard: the sweep sounds, and goes on for seconds.
  const before = await untilLevels(loop, ({ silentFrames }) => silentFrames === 0);
  await blow();
  await untilIdle(app.page);
  const after = await untilLevels(loop, ({ silentFrames }) => silentFrames >= rate / 2);
  const { document } = await benchState(app.page);
  return {
    banner: await bannerText(app.page),
    kept: document.takes.flatMap(({ schedule }) => schedule.channels),
    soundSeconds: (after.frames - after.silentFrames - before.frames) / rate,
  };
}

describe('a live take that cannot go on', () => {
  const endings: Record<string, Ending> = {};
  let complaints: readonly string[] = [];

  beforeAll(async () => {
    await withLoop(satelliteRoom, (loop) =>
      withLiveApp({ environment: loop.environment, microphone: 'allowed' }, async (app) => {
        const { page, context } = app;
        await chooseLive(page, 2.4);
        endings['stopped'] = await strike(loop, app, () => page.keyboard.press('Escape'));
        endings['hidden'] = await strike(loop, app, async () => {
          const other = await context.newPage();
          await other.bringToFront();
          await page.waitForFunction(() => document.visibilityState === 'hidden');
          await other.close();
          await page.bringToFront();
        });
        endings['gone'] = await strike(loop, app, () => loop.unplugMicrophone());
        await clickRun(page);
        await untilIdle(page);
        const missing = await bannerText(page);
        endings['missing'] = { banner: missing, kept: [], soundSeconds: 0 };
        await loop.plugMicrophone();
        // After all that a take still starts, and Esc still stops it.
        endings['again'] = await strike(loop, app, () => page.keyboard.press('Escape'));
        complaints = app.complaints;
      }),
    );
  }, 300_000);

  it.each([
    ['stopped', /stopped/],
    ['hidden', /hidden/],
    ['gone', /Microphone.* went away|device came or went/],
    ['missing', /No microphone was found\. Plug one in/],
    ['again', /stopped/],
  ])('says so when it is %s', (how, sentence) => {
    expect(endings[how]?.banner).toMatch(sentence);
  });

  it.each(['stopped', 'hidden', 'again'])('silences every output at once when %s', (how) => {
    expect(endings[how]?.soundSeconds).toBeLessThan(1);
  });

  it('silences every output once it notices that the microphone is gone', () => {
    expect(endings['gone']?.soundSeconds).toBeLessThan(3.5);
  });

  it('leaves nothing unfinished in the session: at most the speaker before', () => {
    for (const { kept } of Object.values(endings))
      expect(kept.filter((one) => one !== 'FL')).toEqual([]);
  });

  it('makes the browser complain of nothing', () => {
    expect(complaints).toEqual([]);
  });
});

describe('a live take that cannot begin', () => {
  async function runOnce(environment: NodeJS.ProcessEnv, microphone: 'allowed' | 'refused') {
    return withLiveApp({ environment, microphone }, async ({ page, complaints }) => {
      await chooseLive(page, 2.4);
      await clickRun(page);
      await page.getByRole('alert').filter({ hasText: /\w/ }).waitFor();
      await untilIdle(page);
      const banner = await bannerText(page);
      await clickRun(page);
      await untilIdle(page);
      return { banner, again: await bannerText(page), complaints };
    });
  }

  it('says that there is no microphone on a machine without an audio server', async () => {
    const environment = { ...process.env, PULSE_SERVER: 'unix:/nowhere' };
    const { banner, again, complaints } = await runOnce(environment, 'allowed');
    expect(banner).toMatch(/^No microphone was found\. Plug one in/);
    expect(again).toBe(banner);
    expect(complaints).toEqual([]);
  });

  it('says that the microphone was refused, and where to allow it', async () => {
    await withLoop(satelliteRoom, async (loop) => {
      const { banner, again, complaints } = await runOnce(loop.environment, 'refused');
      expect(banner).toMatch(/not allowed\. Allow it for this page in the browser’s address bar/);
      expect(again).toBe(banner);
      expect(complaints).toEqual([]);
    });
  });
});
