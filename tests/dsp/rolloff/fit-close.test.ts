import { describe, expect, it } from 'vitest';
import {
  coneResponse,
  polynomialResponse,
  sealedResponse,
  ventedBox,
  ventedResponse,
} from '../../../dsp/rolloff/box-response';
import { multiply, squared } from '../../../dsp/rolloff/complex';
import { crossingHz } from '../../../dsp/rolloff/crossing';
import { rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { expectClose } from '../../close';
import { freeResponse } from './modal-room';
import { fitClose, fitted, holds, logWidth } from './seat-cases';

describe('fitRolloff close to the speaker', () => {
  it.each([
    ['closed', sealedResponse(38, 0.71)],
    ['closed', sealedResponse(70, 1.1)],
    ['vented', ventedResponse(32, 0)],
    ['vented', ventedResponse(55, -0.8)],
  ] as const)('finds the crossings of a %s box within 5 %%', (kind, speaker) => {
    const fit = fitClose(speaker);
    for (const [quantiles, db] of [
      [fit.f6Hz, 6],
      [fit.f10Hz, 10],
    ] as const) {
      const truth = crossingHz(speaker, db) ?? 0;
      expectClose(quantiles.median, truth, 0.05 * truth);
      expect(holds(quantiles, truth)).toBe(true);
    }
    expect([kind, 'cannot tell']).toContain(fit.box.kind);
  });

  it('tells a plain closed box from a vented one', () => {
    expect(fitClose(sealedResponse(45, 0.6)).box.kind).toBe('closed');
    expect(fitClose(ventedResponse(45, -0.5)).box.kind).toBe('vented');
  });

  it('does not call a closed box behind a protection high-pass vented', () => {
    const box = sealedResponse(50, 0.8);
    const guard = sealedResponse(38, Math.SQRT1_2);
    const fit = fitClose((hz) => multiply(box(hz), guard(hz)));
    expect(fit.box.kind).not.toBe('vented');
    const truth = crossingHz((hz) => multiply(box(hz), guard(hz)), 10);
    expect(holds(fit.f10Hz, truth)).toBe(true);
  });

  it('finds the whole of a vented box from its cone alone, with a wider interval', () => {
    const { f0Hz, polynomial } = ventedBox(38, 0.383, 1.41, 1);
    const whole = polynomialResponse(f0Hz, polynomial);
    const cone = coneResponse(f0Hz, polynomial, (polynomial.a3 / polynomial.a1) * 0.85);
    const bands = rolloffBands(freeResponse(cone), null);
    const fit = fitted(bands, { place: 'close', coneOnly: true });
    expect(holds(fit.f10Hz, crossingHz(whole, 10))).toBe(true);
    expect(logWidth(fit.f10Hz)).toBeGreaterThan(logWidth(fitClose(whole).f10Hz));
  });

  it('lays its curve over the speaker, within its band', () => {
    const speaker = sealedResponse(48, 0.9);
    const { curve, passbandDb } = fitClose(speaker);
    curve.hz.forEach((hz, i) => {
      const db = 10 * Math.log10(squared(speaker(hz)));
      expect(db).toBeGreaterThan((curve.lowDb[i] ?? 0) - 0.3);
      expect(db).toBeLessThan((curve.highDb[i] ?? 0) + 0.3);
    });
    expectClose(passbandDb, 0, 0.5, 'slow ripple is allowed for');
    expectClose([curve.hz[0], curve.hz[curve.hz.length - 1]], [10, 490], 5);
  });

  it('says when a speaker reaches below the bands', () => {
    expect(fitClose(sealedResponse(14, 0.7)).caution).toBe('low');
  });
});
