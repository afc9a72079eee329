import { describe, expect, it } from 'vitest';
import {
  closedBox,
  coneResponse,
  polynomialResponse,
  sealedResponse,
  ventedAlignment,
  ventedBox,
  ventedResponse,
} from '../../../dsp/rolloff/box-response';
import { squared } from '../../../dsp/rolloff/complex';
import { expectClose } from '../../close';

describe('box responses', () => {
  it('are 1 in the passband and fall by 12 or 24 dB an octave below', () => {
    const level = (power: number): number => 10 * Math.log10(power);
    for (const response of [sealedResponse(50, 0.9), ventedResponse(50, 0.5)]) {
      expectClose(squared(response(1e6)), 1, 1e-6);
    }
    const fall = (response: (hz: number) => { re: number; im: number }): number =>
      level(squared(response(0.02))) - level(squared(response(0.01)));
    expectClose(fall(sealedResponse(50, 0.9)), 12.0412, 1e-3);
    expectClose(fall(ventedResponse(50, -0.5)), 24.0824, 1e-3);
  });

  it('turn by 90° at resonance, where a closed box passes Q', () => {
    expectClose(sealedResponse(42, 0.8)(42), { re: 0, im: 0.8 }, 1e-12);
  });

  it('are 0 at 0 Hz, without a NaN', () => {
    expectClose(squared(sealedResponse(50, 0.7)(0)), 0, 0);
    expectClose(squared(coneResponse(50, ventedAlignment(0), 1)(0)), 0, 0);
  });

  it('have a cone that stands still at the tuning and meets the whole far above', () => {
    const { f0Hz, polynomial } = ventedBox(40, 0.3, 3, 1.3);
    const b = polynomial.a3 / polynomial.a1;
    const cone = coneResponse(f0Hz, polynomial, b);
    expectClose(f0Hz * Math.sqrt(b), 1.3 * 40, 1e-9);
    expectClose(squared(cone(1.3 * 40)), 0, 1e-20);
    const whole = polynomialResponse(f0Hz, polynomial);
    expectClose(squared(cone(20000)), squared(whole(20000)), 1e-4);
  });

  it('refuse what is no box', () => {
    expect(() => sealedResponse(0, 1)).toThrow('resonanceHz must be positive, got 0');
    expect(() => sealedResponse(50, Number.NaN)).toThrow(RangeError);
    expect(() => ventedResponse(-1, 0)).toThrow(RangeError);
    expect(() => ventedAlignment(1.2)).toThrow('t must lie between −1 and 1, got 1.2');
    expect(() => closedBox(30, 0.4, 0)).toThrow(RangeError);
    expect(() => ventedBox(30, 0.4, 1, Infinity)).toThrow(RangeError);
  });
});
