import { describe, expect, it } from 'vitest';
import { sealedResponse } from '../../../dsp/rolloff/box-response';
import { complex, multiply } from '../../../dsp/rolloff/complex';
import { crossingHz } from '../../../dsp/rolloff/crossing';
import {
  fitRolloff,
  fitRolloffTogether,
  isRefusal,
  type RolloffFit,
} from '../../../dsp/rolloff/fit-rolloff';
import { rolloffBands, type RolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { freeResponse, makeModalRoom, modalResponse } from './modal-room';
import { drawSeatCases, fitClose, fitted, holds, logWidth, mean } from './seat-cases';

const cases = drawSeatCases(14, 11);
const [one, two] = cases;
if (!one || !two) throw new Error('cases are drawn');

describe('fitRolloff at a seat', () => {
  // Sums of modes, with every speaker at a wall and little lost in the bass: harder than most rooms.
  it('holds the truth in three of four of 40 stiff rooms', () => {
    const stiff = drawSeatCases(40, 11);
    const fits = stiff.map(({ ir }) => fitted(rolloffBands(ir, null), { place: 'room' }));
    const share = (pick: (fit: RolloffFit) => RolloffFit['f6Hz'], db: number): number =>
      mean(
        fits.map((fit, i) => (holds(pick(fit), crossingHz((stiff[i] ?? one).speaker, db)) ? 1 : 0)),
      );
    expect(share((fit) => fit.f3Hz, 3)).toBeGreaterThanOrEqual(0.75);
    expect(share((fit) => fit.f6Hz, 6)).toBeGreaterThanOrEqual(0.75);
    expect(share((fit) => fit.f10Hz, 10)).toBeGreaterThanOrEqual(0.75);
  });

  it('is nearer the truth than the −6 dB point of the 1/3-octave response', () => {
    const errors = cases.map(({ ir, speaker }) => {
      const bands = rolloffBands(ir, null);
      const truth = crossingHz(speaker, 6) ?? 1;
      const own = Math.abs(Math.log(fitted(bands, { place: 'room' }).f6Hz.median / truth));
      return [own, Math.abs(Math.log(naiveCrossing(bands) / truth))] as const;
    });
    expect(mean(errors.map(([own]) => own))).toBeLessThan(
      0.75 * mean(errors.map(([, naive]) => naive)),
    );
  });

  it('does not know how loud the take was', () => {
    const { ir } = one;
    const louder = { ...ir, samples: ir.samples.map((value) => 30 * value) };
    const [a, b] = [ir, louder].map((one) => fitted(rolloffBands(one, null), { place: 'room' }));
    expectClose(b?.f6Hz, a?.f6Hz, 1e-6);
  });

  it('gives the same answer twice', () => {
    const { ir } = two;
    const bands = rolloffBands(ir, null);
    expectClose(fitted(bands, { place: 'room' }), fitted(bands, { place: 'room' }), 0);
  });

  it('orders its quantiles, in the numbers and along the curve', () => {
    for (const { ir } of cases) {
      const { f3Hz, f6Hz, f10Hz, f6Upper80Hz, curve } = fitted(rolloffBands(ir, null), {
        place: 'room',
      });
      for (const { low, median, high } of [f3Hz, f6Hz, f10Hz]) {
        expect(low).toBeLessThan(median);
        expect(median).toBeLessThan(high);
      }
      expect(f6Upper80Hz).toBeGreaterThan(f6Hz.median);
      expect(f6Upper80Hz).toBeLessThan(f6Hz.high);
      curve.hz.forEach((_, i) => {
        expect(curve.lowDb[i]).toBeLessThanOrEqual(curve.medianDb[i] ?? Number.NaN);
        expect(curve.highDb[i]).toBeGreaterThanOrEqual(curve.medianDb[i] ?? Number.NaN);
      });
    }
  });

  it('narrows with more seats a little, with more speakers of one model much', () => {
    const bands = cases.map(({ ir }) => rolloffBands(ir, null));
    const widthOf = (names: readonly string[]): number =>
      mean(
        bands.map((one) => {
          const readings = names.map((speaker) => ({ bands: one, speaker }));
          const fit = fitRolloffTogether(readings, {});
          return isRefusal(fit) ? Number.NaN : logWidth(fit.f10Hz);
        }),
      );
    const one = widthOf(['a']);
    const seats = widthOf(['a', 'a', 'a', 'a', 'a']);
    const models = widthOf(['a', 'b', 'c', 'd', 'e']);
    expect(seats).toBeLessThan(one);
    expect(models).toBeLessThan(0.9 * one);
    expect(models).toBeLessThan(seats);
  });

  it('uses what the sheet says, and doubts a sheet that is far off', () => {
    const right = cases.map(({ ir, speaker }) => {
      const bands = rolloffBands(ir, null);
      const truth = crossingHz(speaker, 3) ?? 1;
      const told = fitted(bands, { place: 'room', sheetF3Hz: truth }).f3Hz;
      return { told, untold: fitted(bands, { place: 'room' }).f3Hz, truth };
    });
    expect(mean(right.map(({ told }) => logWidth(told)))).toBeLessThan(
      0.6 * mean(right.map(({ untold }) => logWidth(untold))),
    );
    expect(right.every(({ told, truth }) => holds(told, truth))).toBe(true);
    const wrong = fitClose(sealedResponse(40, 0.7)).f3Hz.median;
    const bands = rolloffBands(freeResponse(sealedResponse(40, 0.7)), null);
    const misled = fitted(bands, { place: 'close', sheetF3Hz: 120 }).f3Hz.median;
    expectClose(misled, wrong, 0.05 * wrong);
  });

  it('reads a sub behind its low-pass from the bands below 90 Hz', () => {
    const random = seededRandom(5);
    const room = makeModalRoom([5.4, 4.1, 2.6], [0.7, 0.35], random);
    const box = sealedResponse(26, 0.8);
    const lowPass = (hz: number) => complex(1 / Math.sqrt(1 + (hz / 130) ** 8), 0);
    const ir = modalResponse(room, [0.5, 0.6, 0.3], [3.6, 2.2, 1.1], (hz) =>
      multiply(box(hz), lowPass(hz)),
    );
    const fit = fitted(rolloffBands(ir, null), { place: 'room', upperHz: 90 });
    expect(holds(fit.f6Hz, crossingHz(box, 6))).toBe(true);
    expect(fit.f6Hz.high).toBeLessThan(63);
  });
});

describe('fitRolloff', () => {
  it('reads one reading alone and one in a list alike, and refuses none', () => {
    const bands = rolloffBands(one.ir, null);
    const alone = fitted(bands, { place: 'room' });
    expectClose(fitRolloffTogether([{ bands, speaker: 'FL' }], {}), alone, 0);
    expect(() => fitRolloffTogether([], {})).toThrow('got none');
  });

  it('does without early parts where they are not known, and knows less of the box then', () => {
    const certainty = (early: boolean): number =>
      mean(
        cases.map(({ ir }) => {
          const bands = rolloffBands(ir, null);
          const seen = early ? bands : { ...bands, early: [] };
          return fitted(seen, { place: 'room' }).box.probability;
        }),
      );
    expect(certainty(false)).toBeGreaterThan(0.5);
    expect(certainty(true)).toBeGreaterThan(certainty(false) + 0.05);
  });

  it('refuses too few bands and options out of range', () => {
    const { ir } = one;
    const bands = rolloffBands(ir, null);
    expect(fitRolloff(bands, { place: 'room', lowerHz: 300 })).toMatchObject({
      refused: 'too few bands',
    });
    const refusals = [
      [{ upperHz: 20 }, 'upperHz must be at least 60, got 20'],
      [{ lowerHz: -1 }, 'lowerHz must not be negative, got -1'],
      [{ sheetF3Hz: 1 }, 'sheetF3Hz must lie between 5 and 500, got 1'],
      [{ coneOnly: true }, 'coneOnly goes with place close, got room'],
    ] as const;
    for (const [option, message] of refusals) {
      expect(() => fitRolloff(bands, { place: 'room', ...option })).toThrow(message);
    }
  });
});

/** Highest band, in running means over five, that lies 6 dB below the passband. */
function naiveCrossing({ hz, power }: RolloffBands): number {
  const smooth = power.map((_, k) => {
    const around = power.subarray(Math.max(0, k - 2), k + 3);
    return around.reduce((sum, p) => sum + p, 0) / around.length;
  });
  for (let k = hz.length - 1; k >= 0; k--) {
    if ((smooth[k] ?? 1) < 10 ** -0.6) return hz[k] ?? 15;
  }
  return 15;
}
