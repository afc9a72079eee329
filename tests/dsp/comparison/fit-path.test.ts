import { describe, expect, it } from 'vitest';
import { bassGrid } from '../../../dsp/bass/transfer';
import { fitPath } from '../../../dsp/comparison/fit-path';
import { echoes, moved } from './echoes';

const hz = bassGrid();
const band = [25, 100] as const;
const source = echoes(1, hz);

describe('what lies between two responses', () => {
  it.each([
    ['nothing', 1, 0],
    ['half the level and 3.3 ms', 0.5, 0.0033],
    ['the other polarity', -1, 0],
    ['twice the level, the other polarity and −7 ms', -2, -0.007],
  ])('is %s where it was put there', (_what, gain, seconds) => {
    const fit = fitPath(moved(source, hz, gain, seconds), source, hz, band);
    expect(fit?.gainDb).toBeCloseTo(20 * Math.log10(Math.abs(gain)), 6);
    expect(fit?.delaySeconds).toBeCloseTo(seconds, 6);
    expect(fit?.inverted).toBe(gain < 0);
    expect(fit?.agreement).toBeCloseTo(1, 6);
  });

  it('is told with an interval that grows as the responses differ', () => {
    const other = echoes(2, hz);
    const mixed = {
      re: source.re.map((x, k) => x + 0.3 * (other.re[k] ?? 0)),
      im: source.im.map((x, k) => x + 0.3 * (other.im[k] ?? 0)),
    };
    const same = fitPath(source, source, hz, band);
    const near = fitPath(mixed, source, hz, band);
    expect(same?.halfDb).toBeCloseTo(0, 5);
    expect(near?.halfDb ?? 0).toBeGreaterThan(0.1);
    expect(near?.halfSeconds ?? 0).toBeGreaterThan(1e-5);
    expect(near?.agreement ?? 1).toBeLessThan(0.999);
  });

  it('finds little in common between two sources', () => {
    const fit = fitPath(echoes(3, hz), echoes(4, hz), hz, [120, 480]);
    expect(fit?.agreement ?? 1).toBeLessThan(0.8);
  });

  it('is nothing for silence', () => {
    const silence = { re: new Float64Array(hz.length), im: new Float64Array(hz.length) };
    expect(fitPath(silence, source, hz, band)).toBeNull();
    expect(fitPath(source, silence, hz, band)).toBeNull();
  });

  it('throws for a band the grid does not hold', () => {
    expect(() => fitPath(source, source, hz, [600, 900])).toThrow(RangeError);
  });
});
