import { describe, expect, it } from 'vitest';
import { compareDrive } from '../../../dsp/distortion/compare-drive';
import { lowestAtLevel, type LowestFrequency } from '../../../dsp/distortion/lowest-at-level';
import { distortDrive } from '../../../dsp/room/cone-distortion';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';
import { rate, readPlayed } from './distorted-sweep';

const sweep = synchronisedSweep(10, 500, 2 ** 17, rate);
const cone = { hz: 60, second: 0.03, third: 0.07 };

/** Amplitudes of fundamental, second and third harmonic re a drive of `peak` at `hz`. */
function truth(hz: number, peak: number): readonly [number, number, number] {
  // The excursion is a Butterworth low-pass of second order.
  const excursion = 1 / Math.hypot(1, (hz / cone.hz) ** 2);
  const angle = Math.atan2(Math.SQRT2 * (hz / cone.hz), 1 - (hz / cone.hz) ** 2);
  const third = cone.third * peak ** 2 * excursion ** 3;
  const re = 1 - 3 * third * Math.cos(angle);
  const im = 3 * third * Math.sin(angle);
  return [Math.hypot(re, im), cone.second * peak * excursion ** 2, third];
}

function played(driveDb: number, noiseDb: number, seed: number) {
  const gain = 10 ** (driveDb / 20);
  const drive = sweepSignal(sweep).map((value) => gain * value);
  const reading = readPlayed(distortDrive(drive, rate, cone), sweep, null, noiseDb, seed);
  return { driveDb, reading };
}

const drives = [played(-24, -100, 1), played(-6, -100, 2), played(0, -100, 3)];

describe('takes at several drive levels', () => {
  const changes = compareDrive(drives);

  it('show the gain that a cone loses at each, by its closed form', () => {
    for (const { driveDb, reading, gainChangeDb, spreadDb } of changes) {
      for (const [i, hz] of reading.hz.entries()) {
        if (hz < 22 || hz > 150) continue;
        const own = truth(hz, 10 ** (driveDb / 20))[0];
        const least = truth(hz, 10 ** (-24 / 20))[0];
        expectClose(gainChangeDb[i], 20 * Math.log10(own / least), 0.12);
        expect(spreadDb[i] ?? 9).toBeLessThan(0.2);
      }
    }
  });

  it('show harmonics that rise with the square and the cube of it', () => {
    const levels = changes.slice(1).map(({ driveDb, reading }) => {
      const i = reading.hz.findIndex((hz) => Math.abs(hz - 39.4) < 0.1);
      const [first, second, third] = truth(reading.hz[i] ?? 0, 10 ** (driveDb / 20));
      const [h2, h3] = reading.harmonics;
      expectClose(h2?.db[i], 20 * Math.log10(second / first), 0.5);
      expectClose(h3?.db[i], 20 * Math.log10(third / first), 0.3);
      return h3?.db[i] ?? 0;
    });
    expectClose((levels[1] ?? 0) - (levels[0] ?? 0), 12, 1);
  });

  it('refuse a single level, one level twice and other frequencies', () => {
    const [first, second] = drives;
    if (!first || !second) throw new RangeError('two drives');
    expect(() => compareDrive([first])).toThrow(RangeError);
    expect(() => compareDrive([first, first])).toThrow(RangeError);
    const { reading } = second;
    const other = { driveDb: 3, reading: { ...reading, hz: reading.hz.map((hz) => hz * 1.1) } };
    expect(() => compareDrive([first, other])).toThrow(RangeError);
  });
});

describe('the lowest frequency at a level', () => {
  const [, , loud] = compareDrive(drives);
  const ask = (distortion: number, compressionDb = 6): LowestFrequency => {
    if (!loud) throw new RangeError('three drives');
    return lowestAtLevel(loud, { distortion, compressionDb, fromHz: 150 });
  };

  /** Where the closed form crosses a limit, from above. */
  const crossing = (isOver: (hz: number) => boolean): number => {
    let hz = 150;
    while (!isOver(hz)) hz /= 1.0005;
    return hz;
  };

  it('is where distortion passes 3 % and 5 %, within its interval', () => {
    for (const limit of [0.03, 0.05]) {
      const found = ask(limit);
      if (found.kind !== 'told') throw new RangeError(found.kind);
      const at = crossing((hz) => {
        const [first, second, third] = truth(hz, 1);
        return Math.hypot(second, third) / first > limit;
      });
      expect(found.decidedBy).toBe('distortion');
      expect(found.interval[0]).toBeLessThanOrEqual(at);
      expect(found.interval[1]).toBeGreaterThanOrEqual(at);
      expect(found.interval[1] / found.interval[0]).toBeLessThan(1.6);
    }
  });

  it('is where a decibel is lost, when that comes first', () => {
    const found = ask(0.5, 1);
    if (found.kind !== 'told') throw new RangeError(found.kind);
    const least = (hz: number): number => truth(hz, 10 ** (-24 / 20))[0];
    const at = crossing((hz) => truth(hz, 1)[0] / least(hz) < 10 ** (-1 / 20));
    expect(found.decidedBy).toBe('compression');
    expect(found.interval[0]).toBeLessThanOrEqual(at);
    expect(found.interval[1]).toBeGreaterThanOrEqual(at);
  });

  it('is not reached where the limit is nowhere passed', () => {
    const found = ask(0.5);
    expect(found.kind).toBe('not reached');
    if (found.kind === 'not reached') expect(found.hz).toBeLessThan(18);
  });

  it('cannot be told where noise covers the limit', () => {
    const noisy = played(-24, -62, 4);
    const change = { reading: noisy.reading, gainChangeDb: [], spreadDb: [] };
    const found = lowestAtLevel(change, { distortion: 0.005, compressionDb: 1, fromHz: 150 });
    expect(found).toMatchObject({ kind: 'cannot tell', hiddenBy: 'noise' });
  });

  it('passes where noise lies under the limit, though nothing is told', () => {
    const quiet = played(-24, -100, 5);
    const change = { reading: quiet.reading, gainChangeDb: [], spreadDb: [] };
    const found = lowestAtLevel(change, { distortion: 0.1, compressionDb: 1, fromHz: 150 });
    expect(found.kind).toBe('not reached');
  });
});
