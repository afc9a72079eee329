// IEC 61672-1:2013, table 3 and annex E. The standard was not at hand: the table as seen in two
// open acoustics libraries, to a tenth of a dB; the poles as seen in one of them.
import { describe, it } from 'vitest';
import { weightingDb, weightingPoles } from '../../dsp/level/weighting';
import { expectClose } from '../close';

/** Nominal frequency, its number n in 10^(n/10) Hz, A, C. */
const table: readonly (readonly [number, number, number, number])[] = [
  [10, 10, -70.4, -14.3],
  [12.5, 11, -63.4, -11.2],
  [16, 12, -56.7, -8.5],
  [20, 13, -50.5, -6.2],
  [25, 14, -44.7, -4.4],
  [31.5, 15, -39.4, -3.0],
  [40, 16, -34.6, -2.0],
  [50, 17, -30.2, -1.3],
  [63, 18, -26.2, -0.8],
  [80, 19, -22.5, -0.5],
  [100, 20, -19.1, -0.3],
  [125, 21, -16.1, -0.2],
  [160, 22, -13.4, -0.1],
  [200, 23, -10.9, 0.0],
  [250, 24, -8.6, 0.0],
  [315, 25, -6.6, 0.0],
  [400, 26, -4.8, 0.0],
  [500, 27, -3.2, 0.0],
  [630, 28, -1.9, 0.0],
  [800, 29, -0.8, 0.0],
  [1000, 30, 0.0, 0.0],
  [1250, 31, 0.6, 0.0],
  [1600, 32, 1.0, -0.1],
  [2000, 33, 1.2, -0.2],
  [2500, 34, 1.3, -0.3],
  [3150, 35, 1.2, -0.5],
  [4000, 36, 1.0, -0.8],
  [5000, 37, 0.5, -1.3],
  [6300, 38, -0.1, -2.0],
  [8000, 39, -1.1, -3.0],
  [10_000, 40, -2.5, -4.4],
  [12_500, 41, -4.3, -6.2],
  [16_000, 42, -6.6, -8.5],
  [20_000, 43, -9.3, -11.2],
];

describe('frequency weightings', () => {
  it.each(table)('at %d Hz round to the table, at the exact frequency', (_, n, a, c) => {
    const hz = 10 ** (n / 10);
    const read = [weightingDb('A', hz), weightingDb('C', hz)];
    expectClose(read, [a, c], 0.05, 'the table is rounded to 0.1 dB');
  });

  it('have the poles of annex E', () => {
    expectClose([...weightingPoles], [20.598997, 107.652649, 737.862231, 12194.217148], 1e-6);
  });

  it('have poles that give the normalisation constants of annex E, −2.000 dB and −0.062 dB', () => {
    const [f1, f2, f3, f4] = weightingPoles;
    const low = f1 ** 2 / 1e6;
    const high = 1e6 / f4 ** 2;
    const c1000 = -20 * Math.log10((1 + low) * (1 + high));
    const a1000 = c1000 - 10 * Math.log10((1 + f2 ** 2 / 1e6) * (1 + f3 ** 2 / 1e6));
    expectClose([c1000, a1000], [-0.062, -2.0], 0.0005);
  });
});
