import { describe, expect, it } from 'vitest';
import { energyTimeCurve } from '../../../dsp/decay/energy-time-curve';
import { analyticBand } from '../../../dsp/timing/analytic-band';
import { expectClose } from '../../close';

const sampleRate = 48_000;

/** A click, and half of it 10 ms later. */
function clickWithEcho() {
  const samples = new Float64Array(24_000);
  samples[4800] = -1;
  samples[5280] = 0.5;
  return { samples, sampleRate, zeroIndex: 4800 };
}

function levelAt({ seconds, db }: { seconds: Float64Array; db: Float64Array }, at: number): number {
  const near = seconds.findIndex((each) => Math.abs(each - at) < 1e-9);
  return db[near] ?? NaN;
}

describe('energyTimeCurve', () => {
  it('shows a click at its arrival and its echo 6.02 dB lower at its own time, in any cell', () => {
    for (const mostPoints of [100, 701, 24_000]) {
      const curve = energyTimeCurve(clickWithEcho(), { mostPoints });
      expect(curve.seconds.length).toBeLessThanOrEqual(mostPoints);
      expect(curve.seconds.length).toBeGreaterThan(0.5 * mostPoints);
      expectClose(levelAt(curve, 0), 0, 1e-9);
      expectClose(levelAt(curve, 0.01), -6.02, 0.05, 'the click rings under its echo');
    }
  });

  it('counts time from the arrival given', () => {
    const curve = energyTimeCurve(clickWithEcho(), { arrivalSeconds: 0.01, fromSeconds: -0.02 });
    expectClose(levelAt(curve, -0.01), 0, 1e-9);
    expectClose(levelAt(curve, 0), -6.02, 0.05, 'the click rings under its echo');
  });

  it('keeps to the time asked for', () => {
    const curve = energyTimeCurve(clickWithEcho(), { fromSeconds: 0.005, toSeconds: 0.02 });
    expect(curve.seconds[0]).toBeGreaterThanOrEqual(0.005);
    expect(curve.seconds.at(-1)).toBeLessThanOrEqual(0.02);
    expectClose(levelAt(curve, 0.01), 0, 1e-9);
  });

  it('keeps each cell’s largest value, cell by cell', () => {
    const { samples } = clickWithEcho();
    const analytic = analyticBand(samples, sampleRate, 500, 2000);
    const curve = energyTimeCurve(clickWithEcho(), { bandHz: [500, 2000], mostPoints: 240 });
    expectClose(curve.cellSeconds, 100 / sampleRate, 1e-12);
    const powers = Array.from(samples, (_, n) => {
      return (analytic[2 * n] ?? 0) ** 2 + (analytic[2 * n + 1] ?? 0) ** 2;
    });
    const most = Math.max(...powers);
    const cell = powers.slice(5200, 5300);
    expectClose(curve.db[52], 10 * Math.log10(Math.max(...cell) / most), 1e-9);
  });

  it('is empty for silence', () => {
    const silent = { samples: new Float64Array(1000), sampleRate, zeroIndex: 0 };
    expect(energyTimeCurve(silent).db).toHaveLength(0);
  });

  it('refuses an empty stretch, no points and a band that is none', () => {
    const ir = clickWithEcho();
    expect(() => energyTimeCurve(ir, { fromSeconds: 0.3, toSeconds: 0.2 })).toThrow(RangeError);
    expect(() => energyTimeCurve(ir, { mostPoints: 0 })).toThrow(RangeError);
    expect(() => energyTimeCurve(ir, { bandHz: [2000, 500] })).toThrow(RangeError);
  });
});
