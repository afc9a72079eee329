import { beforeAll, describe, expect, it } from 'vitest';
import { readOrder } from '../../../src/reading/read-order';
import type { TogetherOrder } from '../../../src/reading/rolloff-together';
import type { Estimate, RolloffReading } from '../../../src/reading/reading';
import { practiceTruth } from '../../../src/rig/practice-truth';
import type { SessionBench } from '../../../src/session/session-bench';
import { withAlike, withSheetF3 } from '../../../src/system/speaker-models';
import { layoutNamed } from '../reading/wired-room';
import { makeBench, settled, until } from './make-bench';
import { benchInRoom, takeAtSeats } from './practice-seats';

const layout = layoutNamed('2.0');
const seats = 3;
const downs = ['f3Hz', 'f6Hz', 'f10Hz'] as const;

const octaves = ({ interval: [low, high] }: Estimate): number => Math.log2(high / low);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length;

function jointOf(bench: SessionBench): RolloffReading {
  const rolloff = bench.state.together[0]?.finding.rolloff;
  if (!rolloff) throw new RangeError('nothing was read together');
  return rolloff;
}

function singlesOf(bench: SessionBench): RolloffReading[] {
  return bench.state.document.takes.flatMap(
    ({ readings }) => readings?.channels.flatMap(({ rolloff }) => rolloff ?? []) ?? [],
  );
}

describe('fronts of one model, read together from three seats of practice rooms', () => {
  const rooms = [2, 4, 6, 8].map((seed) => ({ seed, ...benchInRoom(seed, layout.name) }));
  beforeAll(async () => {
    for (const { bench } of rooms) await takeAtSeats(bench, seats);
  }, 300_000);

  it('have narrower intervals than one speaker at one seat', () => {
    for (const down of downs) {
      const together = rooms.map(({ bench }) => octaves(jointOf(bench)[down]));
      const alone = rooms.map(({ bench }) =>
        mean(singlesOf(bench).map((rolloff) => octaves(rolloff[down]))),
      );
      expect(mean(together)).toBeLessThan(mean(alone));
    }
  });

  it('hold the truth in their intervals, as nine of ten should', () => {
    const held = rooms.flatMap(({ bench, seed }) => {
      const truth = practiceTruth(layout, seed).channels.find(({ channel }) => channel === 'FL');
      return downs.map((down) => {
        const [low, high] = jointOf(bench)[down].interval;
        const hz = truth?.[down] ?? NaN;
        return low <= hz && hz <= high;
      });
    });
    expect(held.filter(Boolean).length).toBeGreaterThanOrEqual(0.75 * held.length);
  });

  it('decide the crossover, and say from what', () => {
    for (const { bench } of rooms) {
      const [fronts] = bench.state.proposal?.groups ?? [];
      expect(fronts?.readFrom).toEqual({
        channels: ['FL', 'FR'],
        heard: '3 seats and 2 speakers',
      });
      const median = Math.round(jointOf(bench).f6Hz.median);
      expect(fronts?.reason).toContain(
        `Front left and front right are 6 dB down at ${median} Hz, read from 3 seats and 2 speakers`,
      );
    }
  });

  it('keep the numbers of one position in its readings', () => {
    for (const { bench } of rooms) {
      const own = bench.state.document.takes.at(-1)?.readings;
      expect(bench.state.readings).toBe(own);
      expect(own?.channels[0]?.rolloff).not.toEqual(jointOf(bench));
    }
  });

  it('are told more narrowly once their sheet is typed', async () => {
    const [room] = rooms;
    if (!room) throw new RangeError('no room');
    const { bench, seed } = room;
    const before = jointOf(bench);
    const truth = practiceTruth(layout, seed).channels[0]?.f3Hz ?? NaN;
    bench.change('Type the sheet', (document) => ({
      ...document,
      models: withSheetF3(document.models, ['FL', 'FR'], Math.round(truth)),
    }));
    const known = await until(
      bench,
      ({ together }) => typeof together[0]?.order.sheetF3Hz === 'number',
    );
    const told = known.together[0]?.finding.rolloff;
    expect(told && octaves(told.f3Hz)).toBeLessThan(octaves(before.f3Hz));
  });
});

describe('what is read together', () => {
  it('is read once for what it rests on, also when that comes back', async () => {
    const orders: TogetherOrder[] = [];
    const { bench } = benchInRoom(10, layout.name, {
      readTogether(order) {
        orders.push(order);
        return Promise.resolve(readOrder(order));
      },
    });
    await takeAtSeats(bench, 1);
    bench.change('Rename', (document) => ({ ...document, name: 'Attic' }));
    bench.change('Another temperature', (document) => ({
      ...document,
      conditions: { ...document.conditions, temperatureCelsius: 24 },
    }));
    await settled();
    expect(orders.length).toBe(1);
    expect(bench.state.together.length).toBe(1);
    const part = (alike: boolean): void =>
      bench.change('Part them', (document) => ({
        ...document,
        models: withAlike(document.models, 'fronts', alike),
      }));
    part(false);
    await settled();
    expect(bench.state.together).toEqual([]);
    expect(bench.state.proposal?.groups[0]?.readFrom).toBeUndefined();
    part(true);
    expect(bench.state.together.length).toBe(1);
    expect(bench.state.proposal?.groups[0]?.readFrom?.heard).toBe('1 seat and 2 speakers');
    expect(orders.length).toBe(1);
  });

  it('gives no proposal before it is read, then one that stays', async () => {
    const { bench } = benchInRoom(10, layout.name);
    const seen: (number | null)[] = [];
    bench.subscribe(() => {
      const hz = bench.state.proposal?.groups[0]?.reason ?? null;
      if (bench.state.readings) seen.push(hz === null ? null : Number(/at (\d+) Hz/.exec(hz)?.[1]));
    });
    await takeAtSeats(bench, 1);
    await settled();
    expect(seen[0]).toBeNull();
    const told = seen.filter((one) => one !== null);
    expect(told.length).toBeGreaterThan(0);
    expect(new Set(told).size).toBe(1);
  });

  it('is read again after a reload, from what the session kept', async () => {
    const { bench, held } = benchInRoom(10, layout.name);
    await takeAtSeats(bench, 1);
    await settled();
    const stored = held.documents.at(-1);
    if (!stored) throw new RangeError('nothing was saved');
    const next = makeBench({}, structuredClone(stored)).bench;
    const { together } = await until(next, (state) => state.together.length > 0);
    expect(together[0]?.finding).toEqual(bench.state.together[0]?.finding);
  });

  it('that fails says so and is not asked for over and over', async () => {
    let asked = 0;
    const note = 'The roll-off could not be read together: the worker broke. Reload the page.';
    const { bench } = benchInRoom(10, layout.name, {
      readTogether() {
        asked++;
        return Promise.resolve({ rolloff: null, curve: null, bassMarginDb: null, notes: [note] });
      },
    });
    await takeAtSeats(bench, 1);
    bench.change('Rename', (document) => ({ ...document, name: 'Attic' }));
    await settled();
    expect(asked).toBe(1);
    expect(bench.state.together[0]?.finding.notes).toEqual([note]);
    const alone = bench.state.readings?.channels.flatMap(({ rolloff }) => rolloff ?? []) ?? [];
    expect(alone.length).toBe(2);
    expect(bench.state.proposal?.groups[0]?.reason).not.toContain('read from');
  });
});
