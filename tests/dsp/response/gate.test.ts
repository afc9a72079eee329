import { describe, expect, it } from 'vitest';
import { gateResponse } from '../../../dsp/response/gate';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { expectClose } from '../../close';

const ones = { samples: new Float64Array(1000).fill(1), sampleRate: 1000, zeroIndex: 100 };

describe('gateResponse', () => {
  it('falls by halves of a Hann window over its share of either side', () => {
    const { ir } = gateResponse(ones, {
      arrivalSeconds: 0.3,
      beforeSeconds: 0.1,
      afterSeconds: 0.2,
      fade: 0.5,
    });
    // The arrival is sample 400; fades over 300 … 350 and 500 … 600.
    const at = [299, 300, 325, 350, 400, 500, 525, 550, 575, 600, 601].map((n) => ir.samples[n]);
    const cosine = (share: number): number => 0.5 * (1 + Math.cos(Math.PI * share));
    const half = [0, 0, 0.5, 1, 1, 1, cosine(0.25), 0.5, cosine(0.75), 0, 0];
    expectClose(at, half, 1e-12);
    expect(ir.samples).toHaveLength(1000);
    expect(ir.zeroIndex).toBe(100);
  });

  it('is a plain cut without a fade, and falls from the arrival with all of it', () => {
    const options = { arrivalSeconds: 0.3, beforeSeconds: 0.1, afterSeconds: 0.2 };
    const cut = gateResponse(ones, { ...options, fade: 0 }).ir.samples;
    expect(cut.reduce((sum, one) => sum + one, 0)).toBeGreaterThanOrEqual(299);
    expect(new Set(cut)).toEqual(new Set([0, 1]));
    const soft = gateResponse(ones, { ...options, fade: 1 }).ir.samples;
    expectClose([soft[350], soft[400], soft[500]], [0.5, 1, 0.5], 1e-12);
  });

  it('keeps the direct sound alone, whatever comes later', () => {
    const samples = new Float64Array(4096);
    samples[600] = 0.5;
    samples[900] = 0.4;
    const echo = { samples, sampleRate: 48_000, zeroIndex: 0 };
    const { ir } = gateResponse(echo, {
      arrivalSeconds: 600 / 48_000,
      beforeSeconds: 0.001,
      afterSeconds: 0.006,
    });
    const { power } = powerSpectrum(ir, 20);
    expectClose(power, new Float64Array(power.length).fill(0.25), 1e-12);
  });

  it('can be trusted from one period of its length up, or of the response behind the arrival', () => {
    const gate = { arrivalSeconds: 0.3, beforeSeconds: 0.1, afterSeconds: 0.2 };
    expectClose(gateResponse(ones, gate).lowestHz, 5, 1e-9);
    // 600 samples are left behind the arrival.
    expectClose(gateResponse(ones, { ...gate, afterSeconds: 9 }).lowestHz, 1 / 0.6, 1e-9);
  });

  it('keeps nothing before the arrival when told so', () => {
    const { ir } = gateResponse(ones, { arrivalSeconds: 0, beforeSeconds: 0, afterSeconds: 0.1 });
    expect([ir.samples[99], ir.samples[100]]).toEqual([0, 1]);
  });

  it.each([
    { arrivalSeconds: -0.2 },
    { arrivalSeconds: 0.95 },
    { arrivalSeconds: NaN },
    { beforeSeconds: -1 },
    { afterSeconds: 0 },
    { afterSeconds: NaN },
    { fade: 1.1 },
    { fade: NaN },
  ])('refuses %o', (wrong) => {
    const good = { arrivalSeconds: 0, beforeSeconds: 0.01, afterSeconds: 0.1 };
    expect(() => gateResponse(ones, { ...good, ...wrong })).toThrow(RangeError);
  });
});
