import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { ProofLine } from '../../src/proof/proof';
import type { PracticeSlip } from '../../src/rig/practice-slips';
import type { BenchState } from '../../src/session/bench';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { layoutFromName } from '../../src/system/layout';
import type { ProcessorSettings } from '../../src/system/processor-settings';
import { isTrouble } from '../../src/trouble';
import { benchState } from '../journey/live-app';
import { withLoop } from '../loop/with-loop';
import { openSession, type LiveSession } from './live-session';
import { buildSlipHouse, factory, lfeOutput, type Feed, type SlipHouse } from './slip-house';
import { readList, typeSettings } from './type-settings';

/** A house whose system was read, and whose list is typed, to be proved as often as one likes. */
export interface TypedHouse {
  readonly layout: Layout;
  readonly typed: ProcessorSettings;
  /** Lines of a proof through a processor in which these mistakes were made. */
  prove(slips: readonly PracticeSlip[]): Promise<readonly ProofLine[]>;
}

export interface HouseOptions {
  readonly layout: string;
  readonly seed: number;
  /** How the system is read: each speaker by its own wire, or through a processor as it comes. */
  readonly readThrough: 'wires' | 'processor' | 'declared processor';
  readonly sweepSeconds: number;
}

/** A machine that loses audio says so; what it damaged is then played again, at most so often. */
const mostTries = 5;
const lfeLowPassHz = 120;
/** A microphone that clipped is given so much less at the next try, dB. */
const quieterDb = 10;

/** Reads the system of a house in the closed loop and types what is proposed; cleans up after. */
export async function withTypedHouse<T>(
  { layout: name, seed, readThrough, sweepSeconds }: HouseOptions,
  use: (house: TypedHouse) => Promise<T>,
): Promise<T> {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  const directory = await mkdtemp(path.join(tmpdir(), 'leadline-slips-'));
  try {
    const house = buildSlipHouse(layout, seed, directory);
    return await withLoop(house.room, (loop) =>
      openSession(loop, {}, async (session) => {
        await setUp(session, layout, readThrough, sweepSeconds);
        await readSystem(session, house, readThrough === 'wires' ? 'wires' : factory);
        const typed = typeSettings(await readList(session.page), layout);
        const { proposal } = await benchState(session.page);
        for (const { channel, polarity } of proposal?.channels ?? []) {
          if (polarity === 'inverted') house.swapWires(channel);
        }
        const result = await use({
          layout,
          typed,
          prove: (slips) => prove(session, house, { typed, slips }),
        });
        if (session.complaints.length > 0) throw new Error(session.complaints.join('\n'));
        return result;
      }),
    );
  } finally {
    await rm(directory, { recursive: true, force: true });
  }
}

async function setUp(
  { page, loop }: LiveSession,
  layout: Layout,
  readThrough: HouseOptions['readThrough'],
  sweepSeconds: number,
): Promise<void> {
  const groups = [...new Set(layout.channels.map(({ group }) => group))];
  const crossoverHz = Object.fromEntries(
    groups.map((group) => [group, group === 'subs' ? lfeLowPassHz : null]),
  );
  const isDeclared = readThrough === 'declared processor';
  const wanted = {
    layout: layout.name,
    tape: loop.truth[0]?.pathMetres ?? 0,
    sweepSeconds,
    lfeOutput: readThrough === 'wires' ? null : lfeOutput,
    // What a tuner says of a processor that is left as it comes, or does not.
    inForce: isDeclared
      ? { distanceMetres: {}, trimDb: {}, crossoverHz, equaliser: 'off' as const }
      : null,
  };
  await page.evaluate((it) => {
    const bench = document.querySelector('ll-app')?.bench;
    if (!bench) throw new Error('the app has no bench');
    bench.setLayout(it.layout);
    bench.setRig('live');
    bench.change('Set up', (before) => ({
      ...before,
      conditions: { ...before.conditions, referenceDistanceMetres: it.tape },
      live: { ...before.live, gainDb: 0, capDb: 0, lfeOutput: it.lfeOutput },
      take: { ...before.take, sweepSeconds: it.sweepSeconds, repeats: 2 },
      inForce: it.inForce ?? before.inForce,
    }));
  }, wanted);
}

/** Takes the system until every speaker came out whole, and waits for the settings. */
async function readSystem(session: LiveSession, house: SlipHouse, feed: Feed): Promise<void> {
  const { page, loop } = session;
  loop.hear(house.heard(feed));
  for (let tries = 1; ; tries++) {
    const { trouble, toRepeat, readings } = await runToEnd(session, house, feed, 'take');
    if (!trouble && readings && toRepeat.length === 0) break;
    const said = trouble?.sentence ?? `damaged: ${toRepeat.join(', ')}`;
    if (tries === mostTries) throw new Error(`the system could not be read: ${said}`);
  }
  await page.waitForFunction(
    () => document.querySelector('ll-app')?.bench?.state.proposal?.sums === 'there',
    undefined,
    { timeout: 120_000 },
  );
}

async function prove(
  session: LiveSession,
  house: SlipHouse,
  processor: Exclude<Feed, 'wires'>,
): Promise<readonly ProofLine[]> {
  const { loop } = session;
  const dynamics = processor.slips.find(({ kind }) => kind === 'dynamics');
  const hear = (): void =>
    loop.hear(house.heard(processor), dynamics?.kind === 'dynamics' ? dynamics : undefined);
  hear();
  await playAt(session, 0);
  for (let tries = 1; ; tries++) {
    const { trouble, proof, document } = await runToEnd(session, house, processor, 'proof');
    if (!trouble && proof && proof.toRepeat.length === 0) return proof.lines;
    const faults = proof?.readings?.channels.flatMap((channel) => channel.faults) ?? [];
    const said = [trouble?.sentence, ...faults.map(({ sentence }) => sentence)].join(' ');
    if (tries === mostTries) throw new Error(`the proof could not be played: ${said}`);
    // What a mistake made too loud for the microphone is played more quietly, as the fault says.
    if (faults.some(({ kind }) => kind === 'clipped')) {
      await playAt(session, document.live.gainDb - quieterDb);
    }
  }
}

async function playAt({ page }: LiveSession, gainDb: number): Promise<void> {
  await page.evaluate((wanted) => {
    document.querySelector('ll-app')?.bench?.change('Set the gain', (before) => ({
      ...before,
      live: { ...before.live, gainDb: wanted },
    }));
  }, gainDb);
}

/** Runs a take to its end and does by hand what it asks for on the way. */
async function runToEnd(
  { page, loop }: LiveSession,
  house: SlipHouse,
  feed: Feed,
  what: 'take' | 'proof',
): Promise<BenchState> {
  await page.evaluate((which) => {
    const bench = document.querySelector('ll-app')?.bench;
    if (!bench) throw new Error('the app has no bench');
    bench.dismissTrouble();
    void (which === 'take' ? bench.startTake() : bench.startProof());
  }, what);
  const dynamics =
    feed === 'wires' ? undefined : feed.slips.find(({ kind }) => kind === 'dynamics');
  const deadline = Date.now() + 300_000;
  while (Date.now() < deadline) {
    await new Promise((resolve) => setTimeout(resolve, 250));
    const asked = await page.evaluate(() => {
      const { activity } = document.querySelector('ll-app')?.bench?.state ?? {};
      if (activity?.kind === 'waiting') return activity.prompt.steps;
      return activity?.kind === 'idle' ? 'idle' : 'running';
    });
    if (asked === 'idle') return benchState(page);
    if (asked === 'running') continue;
    for (const step of asked) doStep(house, step);
    loop.hear(house.heard(feed), dynamics?.kind === 'dynamics' ? dynamics : undefined);
    await page.evaluate(() => document.querySelector('ll-app')?.bench?.proceed());
  }
  throw new Error(`the ${what} did not end within five minutes`);
}

/** What a person does who reads one step of a prompt. */
function doStep(house: SlipHouse, step: string): void {
  const [, speaker, state] = /^Switch (.+?) (on|off)\b/.exec(step) ?? [];
  if (speaker !== undefined && (state === 'on' || state === 'off')) {
    house.switchTo(speaker as ChannelLabel, state);
  } else if (step !== 'Then go on.') throw new Error(`nobody here can do this: ${step}`);
}
