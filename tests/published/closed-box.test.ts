// Small, "Closed-Box Loudspeaker Systems", JAES 20 (1972) and 21 (1973): fc = fs·√(1 + α),
// Qtc = Qts·√(1 + α), f3/fc = √((q + √(q² + 4))/2) with q = 1/Qtc² − 2, and the worked boxes below.
// Numbers computed from those formulas in double precision outside this project.
import { describe, expect, it } from 'vitest';
import { closedBox, sealedResponse } from '../../dsp/rolloff/box-response';
import { crossingHz } from '../../dsp/rolloff/crossing';
import { squared } from '../../dsp/rolloff/complex';
import { expectClose } from '../close';

const HALF_POWER_DB = 10 * Math.log10(2);

const BOXES = [
  { fs: 25, qts: 0.4, vas: 100, vb: 33.333, fc: 50.0, qtc: 0.8, f3: 44.858 },
  { fs: 35, qts: 0.65, vas: 45, vb: 30, fc: 55.3399, qtc: 1.0277, f3: 42.9933 },
  { fs: 20, qts: 0.35, vas: 150, vb: 50, fc: 40.0, qtc: 0.7, f3: 40.4102 },
];

const F3_OVER_FC: readonly (readonly [number, number])[] = [
  [0.5, 1.55377],
  [0.5773502691896258, 1.27202],
  [0.7071067811865475, 1.0],
  [0.8, 0.89716],
  [0.9, 0.82947],
  [1, 0.78615],
  [1.2, 0.73582],
  [1.5, 0.69935],
];

const PEAKS: readonly (readonly [number, number, number])[] = [
  [0.8, 0.213, 2.1381],
  [0.9, 0.6878, 1.6164],
  [1, 1.2494, 1.4142],
  [1.2, 2.4118, 1.2377],
  [1.5, 4.0334, 1.1339],
];

describe('closed box, after Small', () => {
  it.each(BOXES)('gives fc $fc and Qtc $qtc for fs $fs in $vb litres', (box) => {
    const { resonanceHz, q } = closedBox(box.fs, box.qts, box.vas / box.vb);
    expectClose(resonanceHz, box.fc, 0.001, 'volume printed to three places');
    expectClose(q, box.qtc, 0.0001);
  });

  it.each(BOXES)('falls to half power at $f3 Hz for fs $fs in $vb litres', (box) => {
    const { resonanceHz, q } = closedBox(box.fs, box.qts, box.vas / box.vb);
    const found = crossingHz(sealedResponse(resonanceHz, q), HALF_POWER_DB);
    expect(found).not.toBeNull();
    expectClose(found, box.f3, 0.001);
  });

  it.each(F3_OVER_FC)('has for Qtc %d a half-power point at %d fc', (q, ratio) => {
    expectClose(crossingHz(sealedResponse(1, q), HALF_POWER_DB, 100, 0.01), ratio, 1e-5);
  });

  it.each(PEAKS)('rises for Qtc %d by %d dB at %d fc', (q, peakDb, atRatio) => {
    const level = (hz: number): number => 10 * Math.log10(squared(sealedResponse(1, q)(hz)));
    expectClose(level(atRatio), peakDb, 1e-3);
    expect(level(atRatio * 1.02)).toBeLessThan(level(atRatio));
    expect(level(atRatio / 1.02)).toBeLessThan(level(atRatio));
  });
});
