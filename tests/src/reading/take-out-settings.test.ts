import { beforeAll, describe, expect, it } from 'vitest';
import { rolloffBands, type RolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { divisibleHz, takeOutOfBands } from '../../../src/reading/take-out-filter';
import { processorDelays } from '../../../src/reading/take-out-delay';
import { takeOutNotes } from '../../../src/reading/take-out-settings';
import type { Readings } from '../../../src/reading/reading';
import { practiceSystem } from '../../../src/rig/practice-system';
import {
  nothingInForce,
  usualFilters,
  type SettingsInForce,
} from '../../../src/system/declared-settings';
import { scheduleTake } from '../../../src/take/schedule-take';
import { expectClose } from '../../close';
import { hearProcessed, readProcessed } from './processed-room';
import { layoutNamed, readingOf } from './wired-room';

const nothing: SettingsInForce = { ...nothingInForce, filters: usualFilters };

describe('a take through a processor that was set before', () => {
  const layout = layoutNamed('3.0');
  const schedule = scheduleTake(layout, { sweepSeconds: 1 });
  const system = practiceSystem(layout, 6);
  const typed = {
    distanceMetres: { FL: 2.4, FR: 3.1, FC: 1.9 },
    trimDb: { FL: 2, FR: -3.5, FC: -1 },
    crossoverHz: { fronts: 80, centre: 80 },
  };
  let plain: Readings;
  let through: Readings;
  let declared: Readings;
  beforeAll(async () => {
    plain = await readProcessed(schedule, await hearProcessed(system, schedule, {}), null);
    const delaySeconds = { FL: 0.7 / 343, FR: 0, FC: 1.2 / 343 };
    const highPassHz = { FL: 80, FR: 80, FC: 80 };
    const { trimDb } = typed;
    const heard = await hearProcessed(system, schedule, { delaySeconds, trimDb, highPassHz });
    through = await readProcessed(schedule, heard, null);
    declared = await readProcessed(schedule, heard, { ...nothing, ...typed, equaliser: 'off' });
  }, 120_000);

  it('reads as one through none once distances and trims are declared', () => {
    for (const { channel, distanceMetres, levelDb, arrivalSeconds } of plain.channels) {
      const found = readingOf(declared, channel);
      expectClose(found.distanceMetres, distanceMetres, 0.002);
      expectClose(found.arrivalSeconds, arrivalSeconds, 5e-6);
      expectClose(found.levelDb, levelDb, 0.05);
    }
    expectClose(readingOf(through, 'FR').levelDb, (readingOf(plain, 'FR').levelDb ?? 0) - 3.5, 0.1);
    const off = (readingOf(plain, 'FC').distanceMetres ?? 0) + 0.5 * (343.2 / 343);
    expectClose(readingOf(through, 'FC').distanceMetres, off, 0.002);
  });

  it('draws arrivals where they are without the delays', () => {
    for (const { channel, curves } of plain.channels) {
      const [was, is] = [curves, readingOf(declared, channel).curves].map((one) =>
        one?.envelope.level.indexOf(1),
      );
      expect(Math.abs((is ?? 99) - (was ?? 0))).toBeLessThanOrEqual(1);
    }
  });

  it('has its crossover divided out of response and roll-off', () => {
    for (const { channel, rolloff, curves } of plain.channels) {
      const found = readingOf(declared, channel);
      const ratio = (found.rolloff?.f6Hz.median ?? 0) / (rolloff?.f6Hz.median ?? Number.NaN);
      expect(ratio).toBeGreaterThan(0.8);
      expect(ratio).toBeLessThan(1.25);
      expect(found.notes.join(' ')).toMatch(/\(80 Hz\) is divided out.*trusted from \d+ Hz up/);
      const at = (one: typeof curves): number =>
        one?.response.db[one.response.hz.findIndex((hz) => hz >= 60)] ?? Number.NaN;
      expectClose(at(found.curves), at(curves), 0.5);
      expect(at(readingOf(through, channel).curves)).toBeLessThan(at(curves) - 4);
    }
  });

  it('says what was taken out, and keeps it with the readings', () => {
    expect(declared.notes.join(' ')).toContain('the distances of FL, FR and FC, the trims of');
    expect(declared.notes.join(' ')).toContain('fronts 80 Hz and centre 80 Hz');
    expect(declared.inForce?.trimDb).toEqual(typed.trimDb);
    expect(plain.inForce).toBeUndefined();
  });
});

describe('a roll-off behind a crossover in force', () => {
  const inForce = { ...nothing, crossoverHz: { fronts: 120, subs: null } };
  const withheld = 'Set it to full range for a moment and repeat it.';

  it('is withheld where the sub plays the bass, and says so', async () => {
    const layout = layoutNamed('2.1');
    const schedule = scheduleTake(layout, { sweepSeconds: 1 });
    const processor = { highPassHz: { FL: 120, FR: 120 }, bassTo: 'Sub 1' } as const;
    const heard = await hearProcessed(practiceSystem(layout, 6), schedule, processor);
    const readings = await readProcessed(schedule, heard, inForce);
    for (const label of ['FL', 'FR'] as const) {
      const { rolloff, notes, distanceMetres } = readingOf(readings, label);
      expect(rolloff).toBeNull();
      expect(distanceMetres).not.toBeNull();
      expect(notes.join(' ')).toMatch(/subs play this speaker's bass below 15\d Hz/);
      expect(notes.join(' ')).toContain(withheld);
    }
    expect(readingOf(readings, 'Sub 1').rolloff).not.toBeNull();
  });

  it('is withheld where only noise would be lifted, and says so', async () => {
    const layout = layoutNamed('2.0');
    const schedule = scheduleTake(layout, { sweepSeconds: 1 });
    const quiet = practiceSystem(layout, 6);
    const system = { ...quiet, noise: { pink: 60 * quiet.noise.pink, hiss: quiet.noise.hiss } };
    const heard = await hearProcessed(system, schedule, { highPassHz: { FL: 120, FR: 120 } });
    const readings = await readProcessed(schedule, heard, inForce);
    for (const { rolloff, notes } of readings.channels) {
      expect(rolloff).toBeNull();
      expect(notes.join(' ')).toMatch(
        /crossover in force \(120 Hz\) leaves (only noise|too little)/,
      );
      expect(notes.join(' ')).toContain(withheld);
    }
  });
});

describe('what can be divided out', () => {
  const spec = { family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: 80 } as const;
  const bass = { family: 'linkwitz-riley', kind: 'low-pass', order: 4, cutoffHz: 80 } as const;

  it('ends where a Butterworth high-pass takes 24 dB, a quarter of its cutoff', () => {
    // 1 + (fc/f)⁴ = 10^2.4
    expectClose(divisibleHz({ spec, bassOnSubs: null })[0], 80 / (10 ** 2.4 - 1) ** 0.25, 0.7);
  });

  it('ends where the speaker stands 10 dB over the sub that plays along', () => {
    // x⁴ (1 + x⁴) = 10 with x = f/fc
    const x = ((Math.sqrt(41) - 1) / 2) ** 0.25;
    expectClose(divisibleHz({ spec, bassOnSubs: bass })[0], 80 * x, 3.1);
  });

  it('is more under a window that dies away, where a filter is seen off the axis', () => {
    const ones = () => new Float64Array([1]);
    const bands: RolloffBands = {
      ...rolloffBands(
        { samples: new Float64Array(9600).fill(1, 4800, 4801), sampleRate: 48000, zeroIndex: 4800 },
        null,
      ),
      hz: new Float64Array([80]),
      power: ones(),
      noisePower: ones(),
      early: [{ seconds: 1 / (2 * Math.PI * 80), power: ones(), noisePower: ones() }],
    };
    const divided = takeOutOfBands(bands, spec, [0, Infinity]);
    // A Butterworth has |H(j)|² = 1/2, and at s = 1 + j: 4/((1 + √2)² + (2 + √2)²).
    expectClose(divided.power[0], 2, 1e-12);
    const windowed = ((1 + Math.SQRT2) ** 2 + (2 + Math.SQRT2) ** 2) / 4;
    expectClose(divided.early[0]?.power[0], windowed, 1e-12);
    expectClose(divided.early[0]?.noisePower[0], windowed, 1e-12);
  });

  it('ends of a low-pass where it takes 24 dB', () => {
    // 20 log(1 + x⁴) = 24
    expectClose(divisibleHz({ spec: bass, bassOnSubs: null })[1], 80 * (10 ** 1.2 - 1) ** 0.25, 5);
  });
});

describe('delays in force', () => {
  it('are those beside the farthest channel', () => {
    const delays = processorDelays(['FL', 'FR', 'FC'], 'FL', { FL: 3.43, FR: 0, FC: 6.86 });
    expectClose(delays.get('FL')?.seconds, 0.01, 1e-12);
    expectClose(delays.get('FR')?.seconds, 0.02, 1e-12);
    expect(delays.get('FC')?.seconds).toBe(0);
  });

  it('are not known beside a reference whose distance is not declared, nor without their own', () => {
    expect(processorDelays(['FL', 'FR'], 'FL', { FR: 3 }).get('FR')).toBeNull();
    expect(processorDelays(['FL', 'FR'], 'FL', { FL: 3 }).get('FR')).toBeNull();
    expect(processorDelays(['FL', 'FR'], 'FL', { FL: 3 }).get('FL')?.seconds).toBe(0);
    expect(processorDelays(['FL', 'FR'], 'FL', {}).get('FR')?.seconds).toBe(0);
  });
});

describe('sentences on a whole take', () => {
  const layout = layoutNamed('2.1');

  it('say what is assumed when nothing is declared, and nothing without a processor', () => {
    expect(takeOutNotes(layout, nothing).join()).toMatch(/^Nothing was declared.*full range/);
    expect(takeOutNotes(layout, null)).toEqual([]);
  });

  it('say that an equaliser bends readings, or that it is taken to be off', () => {
    const crossoverHz = { fronts: null, subs: null };
    const on = takeOutNotes(layout, { ...nothing, crossoverHz, equaliser: 'on' });
    expect(on.join()).toMatch(
      /^The equaliser was on: levels, responses and roll-offs.*Switch it off/,
    );
    const unknown = takeOutNotes(layout, { ...nothing, crossoverHz });
    expect(unknown.join()).toMatch(/^Whether the equaliser was on.*off\.$/);
    expect(takeOutNotes(layout, { ...nothing, crossoverHz, equaliser: 'off' })).toEqual([]);
  });

  it('name the groups whose crossover is not known', () => {
    const notes = takeOutNotes(layout, { ...nothing, equaliser: 'off', crossoverHz: { subs: 80 } });
    expect(notes.join(' ')).toContain('(subs 80 Hz). Not declared, so read as full range: fronts.');
  });
});
