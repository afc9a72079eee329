import type { Page } from 'playwright-core';
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Readings } from '../../src/reading/reading';
import { surroundRoom } from '../loop/rooms';
import type { RoomFault } from '../loop/room/faults';
import { withLoop, type Loop } from '../loop/with-loop';
import type { BenchState } from '../../src/session/bench';
import { judgeReadings } from './judge-readings';
import { openSession, setUp, type LiveSession } from './live-session';

/** What is done to a running take, and undone before it is repeated. */
interface Blow {
  readonly name: string;
  strike(session: LiveSession): Promise<void>;
  /** Called as soon as the take is over. */
  mend?(session: LiveSession): Promise<void>;
  /** Struck before the take starts instead of in the sweep of FC. */
  readonly throughout?: boolean;
  /** The browser has lost the system's audio and must be started again. */
  readonly restarts?: boolean;
}

export interface FaultRow {
  readonly name: string;
  /** How the struck take ended: what was said. */
  readonly said: string;
  /** Speakers whose finished segments are in the session after it. */
  readonly kept: number;
  /** After at most three rounds of "repeat that": speakers read without a fault, of all. */
  readonly mended: string;
  /** Wrong numbers that nothing flagged, at any time. */
  readonly wrong: readonly string[];
  readonly passes: boolean;
}

const inject =
  (fault: RoomFault) =>
  ({ loop }: LiveSession): Promise<void> =>
    Promise.resolve(loop.inject(fault));
const calm = inject({ kind: 'none' });

function blows(): Blow[] {
  const spinning: (() => void)[] = [];
  return [
    {
      name: 'audio server killed and restarted',
      strike: ({ loop }) => loop.crashServer(),
      mend: ({ loop }) => loop.restartServer(),
      restarts: true,
    },
    {
      name: 'microphone source removed',
      strike: ({ loop }) => loop.unplugMicrophone(),
      mend: ({ loop }) => loop.plugMicrophone(),
    },
    {
      name: 'output switched',
      strike: ({ loop }) => loop.switchOutput(),
      mend: ({ loop }) => loop.switchBack(),
    },
    { name: 'main thread blocked for 2 s', strike: ({ page }) => blockMainThread(page) },
    {
      name: 'both cores loaded',
      throughout: true,
      strike: () => {
        for (let core = 0; core < 2; core++) {
          const child = spawn(process.execPath, ['-e', 'for (;;);'], { stdio: 'ignore' });
          spinning.push(() => child.kill('SIGKILL'));
        }
        return Promise.resolve();
      },
      mend: () => {
        for (const end of spinning.splice(0)) end();
        return Promise.resolve();
      },
    },
    {
      name: 'noise burst in one sweep',
      strike: inject({ kind: 'noise-burst', frames: 19200, rmsDb: -24 }),
    },
    {
      name: 'gain doubled mid-take',
      strike: inject({ kind: 'gain', gainDb: 6.0206 }),
      mend: calm,
    },
    {
      name: 'clip in one sweep',
      strike: async (session) => {
        // Someone turns the microphone up, so that its converter runs out of range.
        await inject({ kind: 'gain', gainDb: 24 })(session);
        await new Promise((resolve) => setTimeout(resolve, 900));
        await calm(session);
      },
    },
    { name: '480 frames dropped', strike: inject({ kind: 'drop', frames: 480 }) },
  ];
}

/** Strikes one take of a 7.1 after another, each in the sweep of FC, and repeats what was named. */
export async function runFaults(only: string | null): Promise<FaultRow[]> {
  const rows: FaultRow[] = [];
  for (const blow of blows()) {
    if (only !== null && !blow.name.includes(only)) continue;
    const row = await withLoop(surroundRoom, (loop) => runFault(loop, blow));
    rows.push(row);
    console.log(faultText(row));
  }
  return rows;
}

async function runFault(loop: Loop, blow: Blow): Promise<FaultRow> {
  const profile = await mkdtemp(path.join(tmpdir(), 'leadline-profile-'));
  try {
    const struck = await openSession(loop, { profile }, async (session) => {
      await setUp(session, '7.1');
      const state = await strike(session, blow);
      if (blow.restarts) return { state, row: null };
      return { state, row: await mend(session, blow, state) };
    });
    if (struck.row) return struck.row;
    return await openSession(loop, { profile }, async (session) => {
      await session.untilIdle();
      return mend(session, blow, { ...(await session.state()), trouble: struck.state.trouble });
    });
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}

async function strike(session: LiveSession, blow: Blow): Promise<BenchState> {
  if (blow.throughout) await blow.strike(session);
  await session.begin({ take: true });
  if (!blow.throughout) {
    await untilInSweep(session.page, 'FC');
    await blow.strike(session);
  }
  const state = await session.untilIdle();
  await blow.mend?.(session);
  return state;
}

/** "Repeat that", at most three times, until every speaker was read without a fault. */
async function mend(session: LiveSession, blow: Blow, struck: BenchState): Promise<FaultRow> {
  let state = struck;
  const said = [
    ...(state.trouble ? [state.trouble.sentence] : []),
    ...namedFaults(state.readings),
  ].join(' | ');
  const kept = state.readings?.channels.length ?? 0;
  const wrong = new Set<string>();
  const judge = (readings: Readings | null): void => {
    const found = readings ? judgeReadings(readings, session.loop.truth).wrong : [];
    for (const one of found) wrong.add(one);
  };
  judge(state.readings);
  const all = state.layout.channels.length;
  const clean = (): number =>
    state.readings?.channels.filter(({ faults }) => faults.length === 0).length ?? 0;
  for (let round = 1; round <= 3 && clean() < all; round++) {
    const nothing = state.readings === null;
    await session.begin(nothing ? { take: true } : { repeat: state.toRepeat });
    state = await session.untilIdle();
    judge(state.readings);
  }
  return {
    name: blow.name,
    said: said === '' ? 'nothing (unharmed)' : said,
    kept,
    mended: `${clean()}/${all}`,
    wrong: [...wrong],
    passes: wrong.size === 0 && clean() === all && session.complaints.length === 0,
  };
}

function namedFaults(readings: Readings | null): string[] {
  return (readings?.channels ?? []).flatMap(({ channel, faults }) =>
    faults.map(({ kind, sentence }) => `${channel} ${kind}: ${sentence}`),
  );
}

async function untilInSweep(page: Page, channel: string): Promise<void> {
  let since: number | null = null;
  for (let asked = 0; asked < 2400; asked++) {
    const now = await page.evaluate(() => {
      const activity = document.querySelector('ll-app')?.bench?.state.activity;
      return activity?.kind === 'playing'
        ? { channel: activity.channel, position: activity.play.position }
        : null;
    });
    if (now?.channel === channel) {
      since ??= now.position;
      // The mark and its guard, then half of the sweep.
      if (now.position - since > 1.6 * 48000) return;
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`${channel} was never swept`);
}

function blockMainThread(page: Page): Promise<void> {
  return page.evaluate(() => {
    const end = performance.now() + 2000;
    while (performance.now() < end);
  });
}

/** A row as text. */
export function faultText({ name, said, kept, mended, wrong, passes }: FaultRow): string {
  const verdict = passes ? 'ok  ' : 'FAIL';
  const bad = wrong.length === 0 ? '' : ` WRONG: ${wrong.join(', ')}`;
  return `${verdict} ${name.padEnd(36)} kept ${kept}, mended ${mended}${bad}\n     ${said}`;
}
