// Audio EQ Cookbook, W3C Working Group Note, 2021: coefficients computed from its formulas in
// double precision outside this project, at 48 kHz, normalised by a0.
import { it } from 'vitest';
import { equaliserSection, type EqualiserSpec } from '../../dsp/filter/equaliser';
import { expectClose } from '../close';

const q = Math.SQRT1_2;

it.each([
  [
    { kind: 'low-pass', hz: 80, q },
    [2.7213808e-5, 5.4427616e-5, 2.7213808e-5, -1.985190657896, 0.985299513128],
  ],
  [
    { kind: 'high-pass', hz: 80, q },
    [0.992622542756, -1.985245085512, 0.992622542756, -1.985190657896, 0.985299513128],
  ],
  [
    { kind: 'peak', hz: 1000, q: 1, gainDb: 6 },
    [1.04395308699, -1.895320723937, 0.86772228476, -1.895320723937, 0.91167537175],
  ],
  [
    { kind: 'low-shelf', hz: 100, q, gainDb: 4 },
    [1.002138206497, -1.983461995087, 0.981537735971, -1.983501472942, 0.983636464613],
  ],
] as const satisfies readonly (readonly [EqualiserSpec, readonly number[]])[])(
  'the section %o has the published coefficients',
  (spec, coefficients) => {
    const { b0, b1, b2, a1, a2 } = equaliserSection(spec, 48_000);
    expectClose([b0, b1, b2, a1, a2], [...coefficients], 1e-10);
  },
);
