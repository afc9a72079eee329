import { describe, expect, it } from 'vitest';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { sealedResponse } from '../../../dsp/rolloff/box-response';
import { crossingHz } from '../../../dsp/rolloff/crossing';
import { fitRolloff } from '../../../dsp/rolloff/fit-rolloff';
import { rolloffBands, type RolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { expectClose } from '../../close';
import { freeResponse } from './modal-room';
import { drawSeatCases, fitted, holds, logWidth, mean, noisyBands } from './seat-cases';

const cases = drawSeatCases(14, 11);
const [one] = cases;
if (!one) throw new Error('cases are drawn');

describe('fitRolloff in noise', () => {
  const steps = [-45, -35, -25, -15, -8];

  it('widens its intervals on average with every step of noise, and never narrows one by a tenth', () => {
    const widths = cases.map(({ ir }, i) => [
      logWidth(fitted(rolloffBands(ir, null), { place: 'room' }).f10Hz),
      ...steps.map((db) => logWidth(fitted(noisyBands(ir, db, 100 + i), { place: 'room' }).f10Hz)),
    ]);
    for (let s = 1; s <= steps.length; s++) {
      const step = (index: number): number => mean(widths.map((row) => row[index] ?? Number.NaN));
      expect(step(s)).toBeGreaterThanOrEqual(step(s - 1) - 0.005);
      for (const row of widths) {
        const before = Math.max(...row.slice(0, s));
        expect(row[s]).toBeGreaterThan(before + Math.log(0.9));
      }
    }
  });

  it('holds the truth as often when the bass drowns', () => {
    const held = (bands: (ir: ImpulseResponse, i: number) => RolloffBands): number =>
      cases.filter(({ ir, speaker }, i) =>
        holds(fitted(bands(ir, i), { place: 'room' }).f10Hz, crossingHz(speaker, 10)),
      ).length;
    expect(held((ir, i) => noisyBands(ir, -15, 200 + i))).toBeGreaterThanOrEqual(
      held((ir) => rolloffBands(ir, null)) - 1,
    );
  });

  it('is not pulled up by noise that stands where the speaker has ended', () => {
    // 30 Hz and below drown; f10 lies at 41 Hz.
    const speaker = sealedResponse(75, 0.75);
    const drowned = noisyBands(freeResponse(speaker), -22, 7);
    expect(Math.min(...drowned.marginDb.subarray(0, 12))).toBeLessThan(0);
    const clean = fitted(rolloffBands(freeResponse(speaker), null), { place: 'close' });
    const fit = fitted(drowned, { place: 'close' });
    expectClose(fit.f6Hz.median, clean.f6Hz.median, 0.06 * clean.f6Hz.median);
    expect(holds(fit.f10Hz, crossingHz(speaker, 10))).toBe(true);
  });

  it('says that the lower end lies in the noise', () => {
    const { ir } = one;
    const fit = fitted(noisyBands(ir, -8, 3), { place: 'room' });
    expect(fit.usableHz).toBeGreaterThan(16);
    expect(['noise', 'low']).toContain(fit.caution);
  });

  it('refuses to read noise', () => {
    const { ir } = one;
    expect(fitRolloff(noisyBands(ir, 25, 9), { place: 'room' })).toMatchObject({
      refused: 'noise',
    });
  });
});
