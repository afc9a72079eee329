import { afterEach, describe, expect, it } from 'vitest';
import { setLocale } from '../../../src/locale/locale-in-force';
import { lengthText } from '../../../src/locale/length-text';
import { plainLocale } from '../../../src/locale/locale';
import { fakeRig } from './fake-rig';
import { makeBench, settled, until } from './make-bench';
import { toldReadings } from './told-readings';
import type { SessionBench } from '../../../src/session/session-bench';

const imperial = { ...plainLocale, units: 'imperial' } as const;

afterEach(() => setLocale(plainLocale));

/** A bench whose readings carry a length; `reads` counts how often audio was read. */
function benchOf() {
  const room = fakeRig();
  const count = { reads: 0 };
  const made = makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read(schedule) {
        count.reads += 1;
        return Promise.resolve({
          ...toldReadings(schedule),
          notes: [`The speaker is ${lengthText(2)} away.`],
        });
      },
    },
    { rig: 'live' },
  );
  return { ...made, count };
}

/** What proposals are worked out from. */
const readingsParts = (bench: SessionBench): readonly unknown[] =>
  bench.state.document.takes.flatMap((take) => take.readings?.channels ?? []);

const notesOf = (bench: SessionBench): string => bench.state.readings?.notes.join() ?? '';

async function settle(bench: SessionBench): Promise<void> {
  await settled();
  await until(bench, ({ activity }) => activity.kind === 'idle');
  await settled();
}

describe('sentences of readings, when the units are changed', () => {
  it('are written anew, and nothing else of the readings is made anew', async () => {
    const { bench, count } = benchOf();
    await bench.startTake();
    expect(notesOf(bench)).toContain('2.00 m');
    const before = readingsParts(bench);
    setLocale(imperial);
    await settle(bench);
    expect(notesOf(bench)).toMatch(/6\sft\s6\.5\sin/);
    expect(count.reads).toBe(2);
    expect(readingsParts(bench)).toEqual(before);
    readingsParts(bench).forEach((part, index) => expect(part).toBe(before[index]));
    expect(bench.state.trouble).toBeNull();
  });

  it('are no step that undo takes back', async () => {
    const { bench } = benchOf();
    await bench.startTake();
    const { history } = bench.state;
    setLocale(imperial);
    await settle(bench);
    expect(bench.state.history).toEqual(history);
  });

  it('are written anew once more when they are changed back, and not without a change', async () => {
    const { bench, count } = benchOf();
    await bench.startTake();
    setLocale(imperial);
    await settle(bench);
    setLocale({ ...imperial, dates: 'en-US' });
    await settle(bench);
    expect(count.reads).toBe(2);
    setLocale(plainLocale);
    await settle(bench);
    expect(count.reads).toBe(3);
    expect(notesOf(bench)).toContain('2.00 m');
  });

  it('stay as they are, with nothing said, where the recording is gone; it is tried once', async () => {
    const { bench, held, count } = benchOf();
    await bench.startTake();
    held.captures.clear();
    setLocale(imperial);
    await settle(bench);
    expect(notesOf(bench)).toContain('2.00 m');
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.document.takes[0]?.saidIn).toBeUndefined();
    expect(count.reads).toBe(1);
  });

  it('are left alone in a page that only follows another', async () => {
    const { bench, count } = benchOf();
    await bench.startTake();
    bench.follow();
    setLocale(imperial);
    await settle(bench);
    expect(count.reads).toBe(1);
    expect(bench.state.trouble).toBeNull();
  });

  it('of a session from elsewhere are written in the words and units of here', async () => {
    const { bench, held } = benchOf();
    await bench.startTake();
    const stored = bench.state.document;
    setLocale(imperial);
    const next = makeBench(
      {
        read: (schedule) =>
          Promise.resolve({ ...toldReadings(schedule), notes: [`It is ${lengthText(2)} away.`] }),
      },
      stored,
    );
    for (const [id, samples] of held.captures) next.held.captures.set(id, samples);
    await next.bench.resume();
    expect(notesOf(next.bench)).toMatch(/6\sft\s6\.5\sin/);
  });
});
