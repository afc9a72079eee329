import { describe, expect, it } from 'vitest';
import { boxResponse, coneResponse, ventedAlignment } from '../../../dsp/room/box';
import { drawSpeaker } from '../../../dsp/room/draw-speaker';
import { magnitude } from '../../../dsp/room/section';
import { anechoicDb, boxCutoffHz, truthOf } from '../../../dsp/room/truth';
import { expectClose } from '../../close';
import { flatModel } from './shoebox';

describe('the truth of a speaker', () => {
  it('is f0 at −3 dB for a maximally flat closed box, and its closed form at −6 and −10', () => {
    const speaker = {
      ...flatModel,
      box: { kind: 'sealed', resonanceHz: 50, q: Math.SQRT1_2 },
    } as const;
    const { f3Hz, f6Hz, f10Hz } = truthOf(speaker);
    // |H|² = w⁴/(1 + w⁴) = 1/2, 1/4, 1/10.
    expectClose([f3Hz, f6Hz, f10Hz], [50, 50 / 3 ** 0.25, 50 / 9 ** 0.25], 0.001);
  });

  it('is f0 for a maximally flat vented box', () => {
    expectClose(boxCutoffHz(ventedAlignment(42, 0)), 42, 0.001);
  });

  it('moves up by a protection high-pass: two maximally flat sections at one frequency', () => {
    const box = { kind: 'sealed', resonanceHz: 50, q: Math.SQRT1_2 } as const;
    const { f6Hz } = truthOf({ ...flatModel, box, protectionHz: 50 });
    // Two times −3.01 dB at f0.
    expectClose(f6Hz, 50, 0.01);
  });

  it('does not depend on gain, polarity or delay', () => {
    const speaker = drawSpeaker(11);
    const changed = { ...speaker, gainDb: -7, delaySeconds: 0.01 };
    expect(truthOf(changed)).toEqual(truthOf(speaker));
    expect(truthOf({ ...speaker, inverted: true }).inverted).toBe(true);
  });

  it('has the level it names', () => {
    const speaker = drawSpeaker(12, { misaligned: true });
    const { f3Hz, f6Hz, f10Hz } = truthOf(speaker);
    const levels = [f3Hz, f6Hz, f10Hz].map((hz) => anechoicDb(speaker, hz));
    expectClose(levels, [-3.0103, -6.0206, -10], 0.001);
  });

  it('knows that the cone of a vented box stands still at the tuning, where the port plays', () => {
    const box = ventedAlignment(40, 0);
    expectClose(magnitude(coneResponse(box, 40)), 0, 1e-12);
    expectClose(magnitude(coneResponse(box, 4000)), magnitude(boxResponse(box, 4000)), 1e-3);
    expect(magnitude(coneResponse(box, 40, 0.2))).toBeGreaterThan(0.05);
  });
});

describe('drawn speakers', () => {
  it('repeat with their seed and differ without', () => {
    expect(drawSpeaker(5)).toEqual(drawSpeaker(5));
    expect(drawSpeaker(5)).not.toEqual(drawSpeaker(6));
  });

  it('keep to the range of −3 dB frequencies that was asked for', () => {
    for (let seed = 0; seed < 40; seed++) {
      const misaligned = seed % 2 === 0;
      const cutoff = boxCutoffHz(drawSpeaker(seed, { f3Hz: [30, 60], misaligned }).box);
      expect(cutoff).toBeGreaterThan(29.999);
      expect(cutoff).toBeLessThan(60.001);
    }
  });

  it('ripple by about a decibel', () => {
    let square = 0;
    const count = 60;
    for (let seed = 0; seed < count; seed++) {
      const speaker = { ...drawSpeaker(seed), box: flatModel.box, tiltDbPerOctave: 0 };
      square += anechoicDb(speaker, 1000, [200, 8000]) ** 2 / count;
    }
    expect(Math.sqrt(square)).toBeGreaterThan(0.5);
    expect(Math.sqrt(square)).toBeLessThan(1.6);
  });
});
