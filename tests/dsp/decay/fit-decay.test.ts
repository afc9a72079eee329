import { describe, expect, it } from 'vitest';
import type { DecayCurve } from '../../../dsp/decay/decay-curve';
import { fitDecay } from '../../../dsp/decay/fit-decay';
import { expectClose } from '../../close';

/** The curve of exponentials that lose 60 dB in `seconds`, with shares of the energy. */
function curveOf(falls: readonly (readonly [seconds: number, share: number])[]): DecayCurve {
  const stepSeconds = 0.001;
  const remaining = Float64Array.from({ length: 1200 }, (_, n) => {
    return falls.reduce((sum, [t, share]) => sum + share * 10 ** ((-6 * n * stepSeconds) / t), 0);
  });
  const none = {
    noise: 0,
    noiseError: 0,
    added: 0,
    lateSeconds: 0.5,
    rangeDb: 100,
    endedBy: 'noise',
  } as const;
  return { stepSeconds, remaining, kneeSeconds: 1.2, ...none };
}

describe('fitDecay', () => {
  it('reads a pure exponential exactly, without non-linearity', () => {
    const fit = fitDecay(curveOf([[0.5, 1]]), -5, -25, 100);
    expectClose([fit?.seconds, fit?.nonLinearity], [0.5, 0], 1e-9);
    expectClose(fit?.coveredDb, 20, 0.25, 'steps of 0.12 dB');
  });

  it('calls two slopes non-linear: 1000(1 − r²) of their closed form', () => {
    const falls = [
      [0.3, 0.99],
      [1.5, 0.01],
    ] as const;
    const fit = fitDecay(curveOf(falls), -5, -25, 100);
    const points: [number, number][] = [];
    for (let n = 0; n < 1200; n++) {
      const level = 10 * Math.log10(0.99 * 10 ** (-0.02 * n) + 0.01 * 10 ** (-0.004 * n));
      if (level <= -5 && level >= -25) points.push([n, level]);
    }
    const mean = (of: (point: [number, number]) => number): number =>
      points.reduce((sum, point) => sum + of(point), 0) / points.length;
    const [x, y] = [mean(([n]) => n), mean(([, level]) => level)];
    const xy = mean(([n, level]) => (n - x) * (level - y));
    const xx = mean(([n]) => (n - x) ** 2);
    const yy = mean(([, level]) => (level - y) ** 2);
    expectClose(fit?.nonLinearity, 1000 * (1 - xy ** 2 / (xx * yy)), 1e-6);
    expect(fit?.nonLinearity).toBeGreaterThan(10);
  });

  it('is less sure in noise and in narrow bands', () => {
    const clean = curveOf([[0.5, 1]]);
    const noisy = { ...clean, noise: 0.03, noiseError: 0.2 };
    const wide = fitDecay(clean, -5, -25, 400)?.deviation ?? 0;
    expectClose((fitDecay(clean, -5, -25, 100)?.deviation ?? 0) / wide, 2, 1e-9);
    expect(fitDecay(noisy, -5, -25, 400)?.deviation).toBeGreaterThan(1.2 * wide);
  });

  it('gives nothing where the curve does not reach', () => {
    const short = { ...curveOf([[0.5, 1]]), remaining: Float64Array.of(1, 0.9, 0.8) };
    expect(fitDecay(short, -5, -25, 100)).toBeNull();
  });
});
