import { describe, expect, it } from 'vitest';
import { renderChannel } from '../../../src/take/render';
import { scheduleTake } from '../../../src/take/schedule-take';
import { expectClose } from '../../close';
import { hearWires, layoutNamed, readWires, readingOf, type Wires } from './wired-room';

const schedule = scheduleTake(layoutNamed('2.1'), { sweepSeconds: 0.5 });
const metresPerSample = 343.2 / 48000;
const wires: Wires = {
  FL: { delaySamples: 420, gain: 0.5 },
  FR: { delaySamples: 350, gain: 0.4 },
  'Sub 1': { delaySamples: 400, gain: 0.5 },
};

/** What the reference speaker's output plays, `late` samples after the take began. */
function loopbackOf(late: number): Float32Array {
  const loopback = new Float32Array(schedule.lengthSamples + 2400);
  loopback.set(renderChannel(schedule, 'FL'), late);
  return loopback;
}

describe('a take with an electrical loopback', () => {
  it('gives absolute distances without a tape', async () => {
    const readings = await readWires(schedule, hearWires(schedule, wires), {
      loopback: loopbackOf(0),
    });
    expect(readings.absolute).toBe(true);
    expectClose(readings.referenceDistanceMetres, 420 * metresPerSample, 1e-3);
    expectClose(readingOf(readings, 'FL').distanceMetres, 420 * metresPerSample, 1e-3);
    expectClose(readingOf(readings, 'FR').distanceMetres, 350 * metresPerSample, 1e-3);
    expectClose(readingOf(readings, 'FR').arrivalSeconds, -70 / 48000, 2e-6);
    const interval = readingOf(readings, 'FL').distanceInterval ?? [0, 0];
    expect(interval[1]).toBeGreaterThan(interval[0]);
  });

  it('takes the delay of the converters out', async () => {
    const late = 100;
    const heard = hearWires(schedule, wires);
    const shifted = new Float32Array(heard.length);
    shifted.set(heard.subarray(0, heard.length - late), late);
    const readings = await readWires(schedule, shifted, { loopback: loopbackOf(late) });
    expectClose(readings.referenceDistanceMetres, 420 * metresPerSample, 1e-3);
  });

  it('compares the tape, and says when they differ by more than 0.3 m', async () => {
    const samples = hearWires(schedule, wires);
    const loopback = loopbackOf(0);
    const near = await readWires(schedule, samples, { loopback, referenceDistanceMetres: 2.9 });
    const short = expect.stringMatching(/^Sweeps of 0\.5 s hide other sound/) as string;
    expect(near.notes).toEqual([short]);
    const far = await readWires(schedule, samples, { loopback, referenceDistanceMetres: 2.4 });
    expect(far.notes).toEqual([
      expect.stringMatching(/3\.00 m away by the loopback and 2\.40 m/),
      short,
    ]);
  });

  it('needs no mark in the microphone', async () => {
    const quiet = hearWires(schedule, { ...wires, FL: { delaySamples: 420, gain: 0 } });
    const readings = await readWires(schedule, quiet, { loopback: loopbackOf(0) });
    expect(readings.absolute).toBe(true);
    expectClose(readingOf(readings, 'FR').distanceMetres, 350 * metresPerSample, 1e-3);
    expect(readingOf(readings, 'FL').faults).toMatchObject([{ kind: 'silent' }]);
  });

  it('goes by the room when the loopback carries no marks, and says so', async () => {
    const readings = await readWires(schedule, hearWires(schedule, wires), {
      loopback: new Float32Array(schedule.lengthSamples),
    });
    expect(readings).toMatchObject({ absolute: false, referenceDistanceMetres: 2.4 });
    expect(readings.notes[0]).toMatch(/carries none of the take's marks/);
  });

  it('goes by the tape when the loopback tells a distance no room has', async () => {
    const late = { ...wires, FL: { delaySamples: 6000, gain: 0.5 } };
    const readings = await readWires(schedule, hearWires(schedule, late), {
      loopback: loopbackOf(0),
    });
    expect(readings).toMatchObject({ absolute: false, referenceDistanceMetres: 2.4 });
    expect(readings.notes.join()).toMatch(/no room allows/);
  });
});
