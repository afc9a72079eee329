import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { drawMiswiring, type Miswiring } from '../../src/rig/practice-miswiring';
import type { ChannelLabel } from '../../src/system/channel';
import { layoutFromName } from '../../src/system/layout';
import { planTake } from '../../src/take/plan-take';
import type { TakePart } from '../../src/take/take-plan';
import { isTrouble } from '../../src/trouble';
import { solveWalk } from '../../src/wirecheck/solve-walk';
import type { HeardOutput } from '../loop/room/heard-output';
import { surroundRoom } from '../loop/rooms';
import { plainFindings } from '../src/wirecheck/plain-finding';
import { openSession, setUp, type LiveSession } from './live-session';
import { withLoop, type Loop } from '../loop/with-loop';
import { buildWalkHouse, type WalkHouse } from './walk-house';

export interface WalkRow {
  readonly walk: number;
  readonly kind: 'right' | Miswiring['kind'];
  readonly found: readonly string[];
  readonly expected: readonly string[];
  readonly right: boolean;
  /** Least margin of an answer, nats. */
  readonly margin: number;
  /** Stops that had to be played again because the system lost audio and said so. */
  readonly again: number;
}

/** A machine that loses audio says so; the tuner then plays the stop again, at most so often. */
const mostTries = 6;
/** Walks that share a house: the responses of a house take some seconds to compute. */
const walksInHouse = 4;

/**
 * Walks past every speaker of a 5.1.4 in the closed loop, numbers `from` up to and without `to`:
 * even numbers in houses wired right, odd ones in houses with a fault somebody hid.
 */
export async function runWalks(from: number, to: number, outputs: number): Promise<WalkRow[]> {
  const layout = layoutFromName('5.1.4');
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  const directory = await mkdtemp(path.join(tmpdir(), 'leadline-walk-'));
  const rows: WalkRow[] = [];
  const empty = { ...surroundRoom, skewPpm: 0, speakers: surroundRoom.speakers.slice(0, 1) };
  try {
    const walkAll = (loop: Loop): Promise<void> =>
      openSession(loop, {}, async (session) => {
        await setUp(session, layout.name);
        const { document } = await session.state();
        const { routes, lfeOutput } = document.live;
        const plan = planTake(layout, document.take, { outputs, routes, lfeOutput });
        if (isTrouble(plan)) throw new Error(plan.sentence);
        let house: WalkHouse | null = null;
        for (let walk = from; walk < to; walk++) {
          const number = Math.floor(walk / walksInHouse);
          if (house === null || walk % walksInHouse === 0) {
            house = buildWalkHouse(layout, number, directory);
          }
          const fault = walk % 2 === 0 ? null : drawMiswiring(layout, (walk - 1) / 2);
          const again = await walkThrough(session, plan.parts, house, fault);
          const { document: now } = await session.state();
          const result = solveWalk(now.walk, layout, now.system);
          const found = plainFindings(result.findings);
          const expected = plainFindings(fault?.findings ?? []);
          const right = JSON.stringify(found) === JSON.stringify(expected);
          const margin = Math.min(...result.heard.map((one) => one.margin));
          const kind = fault?.kind ?? 'right';
          rows.push({ walk, kind, found, expected, right, margin, again });
          console.log(walkText(rows.at(-1) as WalkRow));
        }
        if (session.complaints.length > 0) throw new Error(session.complaints.join('\n'));
      });
    await withLoop(empty, walkAll, { outputs });
  } finally {
    await rm(directory, { recursive: true, force: true });
  }
  return rows;
}

/** All stops, round after round of plugs; gives how many had to be played again. */
async function walkThrough(
  session: LiveSession,
  parts: readonly TakePart[],
  house: WalkHouse,
  fault: Miswiring | null,
): Promise<number> {
  const { page, loop } = session;
  await page.evaluate(() => {
    document
      .querySelector('ll-app')
      ?.bench?.change('Walk anew', (before) => ({ ...before, walk: [] }));
  });
  let again = 0;
  const { layout } = await session.state();
  for (const [round, part] of parts.entries()) {
    for (const { label } of layout.channels) {
      loop.hear(heardAt(label, part, house, fault));
      for (let tries = 1; ; tries++) {
        const problem = await playStop(session, label, round);
        if (problem === null) break;
        again++;
        if (tries === mostTries) throw new Error(`${label}: ${problem}`);
      }
    }
  }
  return again;
}

/** What the outputs of a part are heard as, where the microphone is held, as things are wired. */
function heardAt(
  heldTo: ChannelLabel,
  { routes }: TakePart,
  house: WalkHouse,
  fault: Miswiring | null,
): HeardOutput[] {
  const { wiring = {}, inverted = [] } = fault?.faults ?? {};
  return Object.entries(routes).map(([name, output]) => {
    const channel = name as ChannelLabel;
    const sounding = wiring[channel] ?? [channel];
    const speakers = sounding.map((speaker) => ({
      response: house.response(speaker, heldTo),
      inverted: inverted.includes(speaker),
    }));
    return { output, speakers };
  });
}

/** Plays one stop to its end, saying yes when plugs are to be moved; gives what went wrong. */
async function playStop(
  { page }: LiveSession,
  at: ChannelLabel,
  round: number,
): Promise<string | null> {
  await page.evaluate(
    ([where, which]) => {
      const bench = document.querySelector('ll-app')?.bench;
      if (!bench) throw new Error('the app has no bench');
      bench.dismissTrouble();
      void bench.walkStop(where, which);
    },
    [at, round] as const,
  );
  const deadline = Date.now() + 60_000;
  for (;;) {
    await new Promise((resolve) => setTimeout(resolve, 150));
    const now = await page.evaluate(() => {
      const bench = document.querySelector('ll-app')?.bench;
      if (bench?.state.activity.kind === 'waiting') bench.proceed();
      return { kind: bench?.state.activity.kind, said: bench?.state.trouble?.sentence ?? null };
    });
    if (now.kind === 'idle') return now.said;
    if (Date.now() > deadline) throw new Error(`the stop at ${at} did not end`);
  }
}

/** A row as text. */
export function walkText({ walk, kind, found, expected, right, margin, again }: WalkRow): string {
  const said = right ? 'right' : `WRONG: ${found.join('; ') || 'nothing'}`;
  const was = right ? '' : ` (was ${expected.join('; ') || 'nothing'})`;
  const retries = again === 0 ? '' : `, ${again} stops again`;
  return `${String(walk).padStart(4)}  ${kind.padEnd(10)} margin ${margin.toFixed(1).padStart(5)}  ${said}${was}${retries}`;
}
