import { describe, expect, it } from 'vitest';
import { rederiveDistances } from '../../../src/reading/rederive-distances';
import { declareForTakes, takesWithOther } from '../../../src/session/follow-declared';
import type { ReadOptions } from '../../../src/session/bench-parts';
import type { SessionBench } from '../../../src/session/session-bench';
import type { SessionDocument } from '../../../src/session/document';
import { expectClose } from '../../close';
import { readWires, hearWires, layoutNamed } from '../reading/wired-room';
import { scheduleTake } from '../../../src/take/schedule-take';
import { fakeRig } from './fake-rig';
import { makeBench, settled, until } from './make-bench';
import { toldReadings } from './told-readings';

/** A bench whose readings say what they were read with; `reads` keeps count. */
function benchOf({ loopback = false } = {}) {
  const room = fakeRig({ loopback });
  const reads: ReadOptions[] = [];
  const { bench, held } = makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read(schedule, _, options) {
        reads.push(options);
        const { temperatureCelsius, referenceDistanceMetres, inForce } = options;
        return Promise.resolve({
          ...toldReadings(schedule),
          temperatureCelsius,
          referenceDistanceMetres,
          ...(inForce ? { inForce } : {}),
        });
      },
    },
    { rig: 'live' },
  );
  return { bench, held, reads };
}

function set(bench: SessionBench, conditions: Partial<SessionDocument['conditions']>): void {
  bench.change('Set', (document) => ({
    ...document,
    conditions: { ...document.conditions, ...conditions },
  }));
}

const distanceOf = (bench: SessionBench, label: string): number =>
  bench.state.readings?.channels.find(({ channel }) => channel === label)?.distanceMetres ?? NaN;

/** A change that may make takes outdated, and all that follows from it. */
async function settle(bench: SessionBench): Promise<void> {
  await until(bench, ({ activity }) => activity.kind === 'idle');
  await settled();
}

describe('another temperature or tape distance', () => {
  it('moves the distances at once, without reading audio again', async () => {
    const { bench, reads } = benchOf();
    await bench.startTake();
    const before = bench.state.readings?.channels ?? [];
    set(bench, { temperatureCelsius: 30, referenceDistanceMetres: 3 });
    expect(reads.length).toBe(1);
    expect(bench.state.readings).toMatchObject({
      temperatureCelsius: 30,
      referenceDistanceMetres: 3,
    });
    for (const { channel, arrivalSeconds } of before) {
      // c = 331.3 √(1 + 30/273.15) at 30 °C
      expectClose(distanceOf(bench, channel), 3 + 349.02 * (arrivalSeconds ?? NaN), 1e-3);
    }
    expect(bench.state.proposal?.channels.length).toBe(2);
  });

  it('gives what reading the audio again would give', async () => {
    const schedule = scheduleTake(layoutNamed('2.0'), { sweepSeconds: 0.5 });
    const samples = hearWires(schedule, { FL: { delaySamples: 420, gain: 0.5 } });
    const wanted = { temperatureCelsius: 4, referenceDistanceMetres: 1.7 };
    const again = await readWires(schedule, samples, wanted);
    const derived = rederiveDistances(await readWires(schedule, samples), wanted);
    expectClose(derived, again, 1e-12);
  });

  it('leaves the tape distance of another position as it was, and brings it back with it', async () => {
    const { bench } = benchOf();
    await bench.startTake();
    bench.setPosition({ name: 'Seat 2', kind: 'seat' });
    set(bench, { referenceDistanceMetres: 3.5 });
    await bench.startTake();
    expect(
      bench.state.document.takes.map((take) => take.readings?.referenceDistanceMetres),
    ).toEqual([2.4, 3.5]);
    bench.setPosition('seat-1');
    expect(bench.state.document.conditions.referenceDistanceMetres).toBe(2.4);
    expect(bench.state.readings?.referenceDistanceMetres).toBe(2.4);
  });

  it('reads a take with a loopback again, because its distances rest on more', async () => {
    const { bench, reads } = benchOf({ loopback: true });
    await bench.startTake();
    set(bench, { temperatureCelsius: 30 });
    expect(bench.state.readings).toBeNull();
    await settle(bench);
    expect(reads.length).toBe(2);
    expect(bench.state.readings?.temperatureCelsius).toBe(30);
  });
});

describe('the calibration of the microphone', () => {
  const calibration = { name: 'invented', hz: [20, 20000], db: [0, 0], phaseDegrees: null };
  const calibrate = (bench: SessionBench, to: typeof calibration | null): void =>
    bench.change('Calibrate', (document) => ({
      ...document,
      microphone: { ...document.microphone, calibration: to },
    }));

  it('is taken back out of the readings when it is removed, at every position', async () => {
    const { bench, reads } = benchOf();
    await bench.startTake();
    bench.setPosition({ name: 'Seat 2', kind: 'seat' });
    await bench.startTake();
    calibrate(bench, calibration);
    await settle(bench);
    calibrate(bench, null);
    expect(bench.state.readings).toBeNull();
    await settle(bench);
    expect(reads.map((one) => one.calibration?.name)).toEqual([
      undefined,
      undefined,
      'invented',
      'invented',
      undefined,
      undefined,
    ]);
    expect(bench.state.document.takes.map(({ outdated }) => outdated)).toEqual([false, false]);
    expect(bench.state.readings).not.toBeNull();
  });

  it('keeps readings that cannot be made again, and says that they are from before', async () => {
    const { bench, held } = benchOf();
    await bench.startTake();
    held.captures.clear();
    calibrate(bench, calibration);
    await settle(bench);
    expect(bench.state.trouble?.sentence).toContain('no longer in this browser');
    expect(bench.state.readings?.notes.join()).toContain('its readings are those from before');
  });

  it('is read with after a reload, when reading again was cut short', async () => {
    const { bench, held, reads } = benchOf();
    await bench.startTake();
    calibrate(bench, calibration);
    const stored = bench.state.document;
    expect(stored.takes[0]?.outdated).toBe(true);
    await settle(bench);
    const next = makeBench({ read: (schedule) => Promise.resolve(toldReadings(schedule)) }, stored);
    for (const [id, samples] of held.captures) next.held.captures.set(id, samples);
    expect(next.bench.state.readings).toBeNull();
    await next.bench.resume();
    expect(next.bench.state.readings).not.toBeNull();
    expect(reads.length).toBe(2);
  });
});

describe('settings in force', () => {
  const declare = (bench: SessionBench, FL: number): void =>
    bench.change('Declare', (document) => ({
      ...document,
      inForce: { ...document.inForce, trimDb: { FL } },
    }));

  it('are those declared when a take was played; what is typed later leaves it alone', async () => {
    const { bench, reads } = benchOf();
    declare(bench, 2);
    await bench.startTake();
    declare(bench, -3);
    await settle(bench);
    expect(reads.map(({ inForce }) => inForce?.trimDb)).toEqual([{ FL: 2 }]);
    expect(bench.state.readings?.inForce?.trimDb).toEqual({ FL: 2 });
    expect(takesWithOther(bench.state.document).length).toBe(1);
  });

  it('can be told of the takes already made, which are read again', async () => {
    const { bench, reads } = benchOf();
    await bench.startTake();
    declare(bench, -3);
    bench.change('They were in force', declareForTakes);
    await settle(bench);
    expect(reads.map(({ inForce }) => inForce?.trimDb)).toEqual([{}, { FL: -3 }]);
    expect(bench.state.readings?.inForce?.trimDb).toEqual({ FL: -3 });
    expect(takesWithOther(bench.state.document)).toEqual([]);
    const { document } = bench.state;
    expect(declareForTakes(document)).toBe(document);
  });

  it('say nothing of takes made when nothing could be declared, nor of filters without a crossover', async () => {
    const { bench } = benchOf();
    await bench.startTake();
    const { document } = bench.state;
    const old = document.takes.map((take) => ({ ...take, inForce: undefined }));
    expect(takesWithOther({ ...document, takes: old })).toEqual([]);
    const steep = { family: 'Butterworth', order: 4 } as const;
    const other = document.takes.map((take) => ({
      ...take,
      inForce: { ...document.inForce, filters: { highPass: steep, subLowPass: steep } },
    }));
    expect(takesWithOther({ ...document, takes: other })).toEqual([]);
    const crossoverHz = { fronts: 80 };
    const crossed = { ...document, inForce: { ...document.inForce, crossoverHz } };
    expect(takesWithOther({ ...crossed, takes: other }).length).toBe(1);
  });
});
