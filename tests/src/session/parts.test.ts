import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../src/session/document';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';
import { fakeRig } from './fake-rig';
import { makeBench, settled, until } from './make-bench';
import { toldReadings } from './told-readings';

const live: Partial<SessionDocument> = { rig: 'live', layout: '7.1.4' };

/** Twelve speakers on the eight outputs of an invented interface. */
function bench12(document: Partial<SessionDocument> = {}) {
  const room = fakeRig({ outputs: 8 });
  const made = makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read: (schedule) => Promise.resolve(toldReadings(schedule)),
    },
    { ...live, ...document },
  );
  return { ...room, ...made };
}

function labelsOf(name: string): string[] {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  return layout.channels.map(({ label }) => label);
}

const isWaiting = (state: { activity: { kind: string } }): boolean =>
  state.activity.kind === 'waiting';

describe('a layout with more speakers than outputs', () => {
  it('is played in parts, and waits for the plugs in between', async () => {
    const { bench, played } = bench12();
    const run = bench.startTake();
    const { activity } = await until(bench, isWaiting);
    expect(played.length).toBe(1);
    if (activity.kind !== 'waiting') throw new Error('it does not wait');
    expect(activity.prompt.title).toMatch(/move \d+ plugs/);
    expect(activity.prompt.steps[0]).toMatch(/amplifiers off/);
    const [, second] = activity.prompt.steps;
    expect(second).toMatch(/^Move the plug on output [1-8] from \w+ to \w+\.$/);
    expect(activity.prompt.steps.at(-1)).toBe('Then go on.');
    bench.proceed();
    await run;
    expect(bench.state.trouble).toBeNull();
    expect(played.length).toBe(2);
    const swept = new Set(played.flatMap((one) => one.swept));
    expect([...swept].sort()).toEqual(labelsOf('7.1.4').sort());
  });

  it('has every part stored and read before the tuner is asked for the next', async () => {
    const { bench, held, played } = bench12();
    const run = bench.startTake();
    const state = await until(bench, isWaiting);
    await settled();
    expect(state.readings?.channels.map(({ channel }) => channel)).toEqual(played[0]?.swept);
    const stored = held.documents.at(-1);
    expect(stored?.takes.map(({ readings }) => readings !== null)).toEqual([true]);
    expect(held.captures.has(stored?.takes[0]?.captureId ?? '')).toBe(true);
    bench.stop();
    await run;
  });

  it('shows the readings of all parts as one', async () => {
    const { bench } = bench12();
    const run = bench.startTake();
    await until(bench, isWaiting);
    bench.proceed();
    await run;
    expect(bench.state.document.takes.length).toBe(2);
    const read = bench.state.readings?.channels.map(({ channel }) => channel) ?? [];
    expect([...read].sort()).toEqual(labelsOf('7.1.4').sort());
    expect(bench.state.proposal?.channels.length).toBe(12);
  });

  it('keeps what was played when stopped while it waits', async () => {
    const { bench, played } = bench12();
    const run = bench.startTake();
    await until(bench, isWaiting);
    bench.stop();
    await run;
    expect(bench.state.activity.kind).toBe('idle');
    expect(bench.state.trouble?.trouble).toBe('stopped');
    expect(played.length).toBe(1);
    expect(bench.state.document.takes.length).toBe(1);
    expect(bench.state.readings).not.toBeNull();
  });

  it('has the plugs looked at when nobody knows whether they were moved', async () => {
    const { bench, played } = bench12();
    const first = bench.startTake();
    await until(bench, isWaiting);
    bench.stop();
    await first;
    const second = bench.startTake();
    const { activity } = await until(bench, isWaiting);
    expect(played.length).toBe(1);
    if (activity.kind !== 'waiting') throw new Error('it does not wait');
    expect(activity.prompt.steps.join(' ')).toMatch(/See that output \d feeds/);
    bench.stop();
    await second;
  });

  it('has the plugs moved back before the next take of all', async () => {
    const { bench, played } = bench12();
    const first = bench.startTake();
    await until(bench, isWaiting);
    bench.proceed();
    await first;
    const second = bench.startTake();
    const { activity } = await until(bench, isWaiting);
    if (activity.kind !== 'waiting') throw new Error('it does not wait');
    const moved = played[1]?.routes ?? {};
    for (const [speaker, output] of Object.entries(played[0]?.routes ?? {})) {
      const instead = Object.entries(moved).find(([, where]) => where === output)?.[0];
      if (!instead || instead === speaker) continue;
      expect(activity.prompt.steps).toContain(
        `Move the plug on output ${output + 1} from ${instead} to ${speaker}.`,
      );
    }
    bench.stop();
    await second;
  });

  it('has the plugs looked at after a reload in the middle', async () => {
    const before = bench12();
    const run = before.bench.startTake();
    await until(before.bench, isWaiting);
    await settled();
    const stored = before.held.documents.at(-1);
    before.bench.stop();
    await run;
    const { bench, played } = bench12(stored);
    await bench.resume();
    expect(bench.state.activity.kind).toBe('idle');
    expect(bench.state.readings?.channels.length).toBe(before.played[0]?.swept.length);
    const again = bench.startTake();
    const { activity } = await until(bench, isWaiting);
    expect(played.length).toBe(0);
    if (activity.kind !== 'waiting') throw new Error('it does not wait');
    expect(activity.prompt.title).toMatch(/look at the plugs/);
    bench.stop();
    await again;
  });
});

describe('two subs on one output', () => {
  it('are played one after the other, the other switched off', async () => {
    const { bench, played } = bench12({
      layout: '5.2',
      live: { ...bench12().bench.state.document.live, routes: { 'Sub 1': 5, 'Sub 2': 5 } },
    });
    const prompts: string[] = [];
    bench.subscribe(() => {
      const { activity } = bench.state;
      if (activity.kind !== 'waiting') return;
      prompts.push(activity.prompt.steps.join(' '));
      queueMicrotask(() => bench.proceed());
    });
    await bench.startTake();
    expect(bench.state.trouble).toBeNull();
    const subs = played.map((one) => one.swept.filter((label) => label.startsWith('Sub')));
    expect(subs.flat()).toEqual(['Sub 1', 'Sub 2']);
    expect(subs.every((labels) => labels.length <= 1)).toBe(true);
    expect(prompts.some((text) => text.includes('Switch Sub 2 off'))).toBe(true);
    expect(prompts.some((text) => text.includes('Switch Sub 1 off'))).toBe(true);
  });
});
