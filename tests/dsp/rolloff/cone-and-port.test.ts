// Closed form: a lossless vented box sends s⁴/D(s); its cone alone s²(s² + a3/a1)/D(s), its port the
// rest, −(a3/a1)s²/D(s) (Small, JAES 1973). Close to an opening the pressure goes as volume velocity
// over radius (Keele, JAES 1974), at a distance r in full space as over 4r.
import { describe, expect, it } from 'vitest';
import { bassGrid } from '../../../dsp/bass/transfer';
import { coneAndPort } from '../../../dsp/rolloff/cone-and-port';
import { fitRolloff, isRefusal } from '../../../dsp/rolloff/fit-rolloff';

const grid = bassGrid();
/** Butterworth, fourth order: a1 = a3 = 2.6131, a2 = 3.4142; its −3 dB point is f0. */
const [a1, a2, a3] = [2.6131, 3.4142, 2.6131];
const f0 = 42;
/** The port 2.5 radii of the cone away. */
const across = 0.1;

interface Heard {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** (c4 s⁴ + c2 s²)/D(s) over the grid. */
function over(c4: number, c2: number): Heard {
  const re = new Float64Array(grid.length);
  const im = new Float64Array(grid.length);
  for (const [n, hz] of grid.entries()) {
    const w = hz / f0;
    const [d, e] = [w ** 4 - a2 * w ** 2 + 1, -a1 * w ** 3 + a3 * w];
    const top = c4 * w ** 4 - c2 * w ** 2;
    re[n] = (top * d) / (d * d + e * e);
    im[n] = (-top * e) / (d * d + e * e);
  }
  return { re, im };
}

const quiet = new Float64Array(61);
const b = a3 / a1;
/** Before the cone, in units of the cone; and in the mouth of a port `share` as wide. */
const atCone = { transfer: over(1, b - across * b), noisePower: quiet };
const atPort = (share: number) => ({
  transfer: over(across, -b / share + across * b),
  noisePower: quiet,
});
const db = (power: number): number => 10 * Math.log10(power);

describe('cone and port of a vented box', () => {
  it.each([0.3, 0.6, 1.4])('add up to its box, the port %d as wide as the cone', (share) => {
    const bands = coneAndPort(atCone, atPort(share), share);
    for (const [k, hz] of bands.hz.entries()) {
      const box = (hz / f0) ** 8 / (1 + (hz / f0) ** 8);
      // The lowest and the highest band reach beyond the grid.
      const tolerance = k === 0 || k === 60 ? 0.6 : 0.1;
      expect(Math.abs(db((bands.power[k] ?? 0) / box))).toBeLessThan(tolerance);
    }
  });

  it('give its roll-off, which neither gives by itself', () => {
    const fit = fitRolloff(coneAndPort(atCone, atPort(0.4), 0.4), { place: 'close', summed: true });
    if (isRefusal(fit)) throw new Error(fit.refused);
    // Butterworth: −6 and −10 dB at f0·(10^0.6 − 1)^(−1/8) and f0·9^(−1/8).
    const f6 = f0 * (10 ** 0.6 - 1) ** -0.125;
    const f10 = f0 * 9 ** -0.125;
    expect(Math.abs(fit.f6Hz.median / f6 - 1)).toBeLessThan(0.06);
    expect(Math.abs(fit.f10Hz.median / f10 - 1)).toBeLessThan(0.06);
    const alone = fitRolloff(coneAndPort(atCone, atPort(0.4), 1e-6), { place: 'close' });
    if (isRefusal(alone)) throw new Error(alone.refused);
    expect(alone.f6Hz.median / f6 - 1).toBeGreaterThan(0.1);
  });

  it('bring the noise of both', () => {
    const noisy = { ...atCone, noisePower: quiet.map(() => 1e-3) };
    const one = coneAndPort(noisy, atPort(0.5), 0.5);
    const both = coneAndPort(noisy, { ...atPort(0.5), noisePower: quiet.map(() => 1e-3) }, 0.5);
    expect(Math.max(...one.noisePower)).toBeGreaterThan(5e-4);
    for (const [k, noise] of both.noisePower.entries()) {
      expect(noise).toBeGreaterThan(one.noisePower[k] ?? 1);
    }
  });

  it('refuse what cannot be summed', () => {
    for (const share of [0, -1, 2.1, NaN]) {
      expect(() => coneAndPort(atCone, atPort(0.5), share)).toThrow(RangeError);
    }
    const short = {
      transfer: { re: new Float64Array(5), im: new Float64Array(5) },
      noisePower: quiet,
    };
    expect(() => coneAndPort(atCone, short, 0.5)).toThrow('241 points, got 5');
  });
});
