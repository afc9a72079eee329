import type { Page } from 'playwright-core';
import type { BenchState } from '../../src/session/bench';
import type { SessionDocument } from '../../src/session/document';
import type { ChannelLabel } from '../../src/system/channel';
import { benchState } from '../journey/live-app';
import { withLiveApp } from '../journey/live-browser';
import type { RoomSpec } from '../loop/room/room-spec';
import { withLoop, type Loop, type LoopOptions } from '../loop/with-loop';

/** Output of the 7.1 interface that feeds each speaker. */
export const outputOf: Readonly<Partial<Record<ChannelLabel, number>>> = {
  FL: 0,
  FR: 1,
  FC: 2,
  'Sub 1': 3,
  BL: 4,
  BR: 5,
  SiL: 6,
  SiR: 7,
};

/** The app on the loop, at the live rig, driven through its bench. */
export interface LiveSession {
  readonly loop: Loop;
  readonly page: Page;
  readonly complaints: readonly string[];
  state(): Promise<BenchState>;
  /** Starts something of the bench without waiting for its end. */
  begin(action: BenchAction): Promise<void>;
  /** Waits until nothing plays and nothing is read. */
  untilIdle(): Promise<BenchState>;
  change(settings: SettingsChange): Promise<void>;
}

interface SettingsChange {
  readonly take?: Partial<SessionDocument['take']>;
  readonly live?: Partial<SessionDocument['live']>;
}

export type BenchAction =
  | { readonly take: true }
  | { readonly repeat: readonly ChannelLabel[] }
  | {
      readonly noise: Parameters<
        NonNullable<HTMLElementTagNameMap['ll-app']['bench']>['startNoise']
      >[0];
    };

/** Opens the built app on a loop of this room, live, at full test level, no repeats of its own. */
export async function withLiveSession<T>(
  room: RoomSpec,
  layout: string,
  use: (session: LiveSession) => Promise<T>,
  options: LoopOptions = {},
): Promise<T> {
  return withLoop(
    room,
    (loop) =>
      openSession(loop, {}, async (session) => {
        await setUp(session, layout);
        return use(session);
      }),
    options,
  );
}

/** Opens the app on a loop that runs, with the session that its profile holds. */
export async function openSession<T>(
  loop: Loop,
  { profile }: { readonly profile?: string },
  use: (session: LiveSession) => Promise<T>,
): Promise<T> {
  const { environment } = loop;
  const options = { environment, microphone: 'allowed', ...(profile ? { profile } : {}) } as const;
  return withLiveApp(options, async ({ page, complaints }) => {
    await page.waitForFunction(() => Boolean(document.querySelector('ll-app')?.bench));
    await page.mouse.click(5, 5);
    return use({
      loop,
      page,
      complaints,
      state: () => benchState(page),
      begin: (action) => begin(page, action),
      untilIdle: () => untilIdle(page),
      change: (settings) => changeSettings(page, settings),
    });
  });
}

/** Declares the layout and goes live at full test level, with no repeats of its own. */
export async function setUp({ page, loop }: LiveSession, layout: string): Promise<void> {
  const tape = loop.truth[0]?.pathMetres ?? 0;
  await page.evaluate(
    ([name, metres]) => {
      const bench = document.querySelector('ll-app')?.bench;
      if (!bench) throw new Error('the app has no bench');
      bench.setLayout(name);
      bench.setRig('live');
      bench.change('Set up', (before) => ({
        ...before,
        conditions: { ...before.conditions, referenceDistanceMetres: metres },
        live: { ...before.live, gainDb: 0, capDb: 0 },
        take: { ...before.take, repeats: 0 },
      }));
    },
    [layout, tape] as const,
  );
}

function begin(page: Page, action: BenchAction): Promise<void> {
  return page.evaluate((what) => {
    const bench = document.querySelector('ll-app')?.bench;
    if (!bench) throw new Error('the app has no bench');
    if ('take' in what) void bench.startTake();
    else if ('repeat' in what) void bench.repeatSegments(what.repeat);
    else void bench.startNoise(what.noise);
  }, action);
}

async function untilIdle(page: Page): Promise<BenchState> {
  const deadline = Date.now() + 300_000;
  while (Date.now() < deadline) {
    await new Promise((resolve) => setTimeout(resolve, 300));
    const kind = await page.evaluate(
      () => document.querySelector('ll-app')?.bench?.state.activity.kind,
    );
    if (kind === 'idle') return benchState(page);
  }
  throw new Error('the bench was not idle again within five minutes');
}

function changeSettings(page: Page, settings: SettingsChange): Promise<void> {
  return page.evaluate((wanted) => {
    document.querySelector('ll-app')?.bench?.change('Set up', (before) => ({
      ...before,
      take: { ...before.take, ...wanted.take },
      live: { ...before.live, ...wanted.live },
    }));
  }, settings);
}
