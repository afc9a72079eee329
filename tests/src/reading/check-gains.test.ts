import { describe, expect, it } from 'vitest';
import { scheduleTake } from '../../../src/take/schedule-take';
import { expectClose } from '../../close';
import { hearWires, layoutNamed, readWires, readingOf, type Wires } from './wired-room';

const schedule = scheduleTake(layoutNamed('3.1'), { sweepSeconds: 0.5 });
const wires: Wires = {
  FL: { delaySamples: 420, gain: 0.2 },
  FR: { delaySamples: 350, gain: 0.2 },
  FC: { delaySamples: 300, gain: 0.2 },
  'Sub 1': { delaySamples: 400, gain: 0.2 },
};

/** The take with its gain `times` as high from a sample on. */
function louderFrom(at: number, times: number): Float32Array {
  const heard = hearWires(schedule, wires);
  for (let n = at; n < heard.length; n++) heard[n] = times * (heard[n] ?? 0);
  return heard;
}

const [, second, third] = schedule.segments;

describe('a gain that changes during the take', () => {
  it('is named in every segment after it, whose levels are withheld and arrivals kept', async () => {
    const readings = await readWires(schedule, louderFrom((second?.sweepStart ?? 0) + 9000, 2));
    for (const label of ['FC', 'Sub 1'] as const) {
      const { faults, levelDb, notes, distanceMetres } = readingOf(readings, label);
      expect(faults).toMatchObject([{ kind: 'gain' }]);
      expect(faults[0]?.sentence).toMatch(/\+6\.0 dB against that of FL/);
      expect(levelDb).toBeNull();
      expect(notes.join()).toMatch(/No level: the gain is not/);
      expect(distanceMetres).not.toBeNull();
    }
    expect(readingOf(readings, 'FL').faults).toEqual([]);
    expectClose(readingOf(readings, 'FC').arrivalSeconds, -120 / 48000, 2e-6);
  });

  it('spoils the segment it happens in', async () => {
    const readings = await readWires(schedule, louderFrom((third?.sweepStart ?? 0) + 9000, 0.5));
    expect(readingOf(readings, 'FC')).toMatchObject({ levelDb: null, arrivalSeconds: null });
    expect(readingOf(readings, 'FC').faults[0]).toMatchObject({ kind: 'gain' });
    expect(readingOf(readings, 'FC').faults[0]?.sentence).toMatch(/changed by −6\.0 dB within/);
    expect(readingOf(readings, 'Sub 1').faults).toMatchObject([{ kind: 'gain' }]);
    expect(readingOf(readings, 'FR').faults).toEqual([]);
  });

  it('is not found where there is none', async () => {
    const noisy = hearWires(schedule, wires, { rms: 3e-3, seed: 8 });
    const readings = await readWires(schedule, noisy);
    for (const { faults } of readings.channels) expect(faults).toEqual([]);
  });
});
