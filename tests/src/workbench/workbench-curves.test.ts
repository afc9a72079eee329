import { describe, expect, it } from 'vitest';
import { bassGrid } from '../../../dsp/bass/transfer';
import { abilitiesOf } from '../../../src/proposal/abilities';
import type { BassField } from '../../../src/proposal/bass-field';
import type { BassSettings } from '../../../src/proposal/bass-settings';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { filterCurves, workbenchCurves } from '../../../src/workbench/workbench-curves';
import { expectClose } from '../../close';

const hz = bassGrid();
/** Linkwitz-Riley of the fourth order on both sides, which sums flat in step. */
const pair = {
  ...abilitiesOf(defaultProcessorSteps, null),
  filters: {
    highPass: { family: 'Linkwitz-Riley', order: 4 },
    subLowPass: { family: 'Linkwitz-Riley', order: 4 },
  },
} as const;
const settings: BassSettings = {
  crossoverHz: { fronts: 80 },
  distanceMetres: { FL: 2, 'Sub 1': 2 },
  trimDb: {},
  inverted: [],
  subLowPassHz: null,
  lowCutHz: null,
  metresPerSecond: 340,
};

/** A source of one gain at every frequency, at so many seats. */
function flat(gain: number, seats: number) {
  return Array.from({ length: seats }, () => ({
    re: hz.map(() => gain),
    im: hz.map(() => 0),
  }));
}

function fieldOf(seats: number, mainGain = 0.02, subGain = 0.02): BassField {
  return {
    hz,
    seats: Array.from({ length: seats }, (_, n) => `Seat ${n + 1}`),
    subs: [{ channel: 'Sub 1', seats: flat(subGain, seats) }],
    mains: new Map([['FL', flat(mainGain, seats)]]),
    marginDb: null,
  };
}

function at(curve: readonly number[], f: number): number {
  const k = hz.findIndex((one) => one >= f);
  return curve[k] ?? Number.NaN;
}

describe('the curves of the workbench', () => {
  it('sum flat through a Linkwitz-Riley pair in step', () => {
    const curves = workbenchCurves(fieldOf(2), 'FL', 80, pair, settings);
    expect(curves?.sum).toHaveLength(hz.length);
    for (const db of curves?.sum ?? []) expectClose(db, 0, 1e-9);
    expect(curves?.seats.map(({ name }) => name)).toEqual(['Seat 1', 'Seat 2']);
    // Both sides of the pair are 6.02 dB down at the crossover; the mean over 1/12 octave is nearly.
    expectClose(at(curves?.speaker ?? [], 80), -6.02, 0.2);
    expectClose(at(curves?.subs ?? [], 80), -6.02, 0.2);
  });

  it('cancel at the crossover with the sub turned over', () => {
    const turned = { ...settings, inverted: ['Sub 1' as const] };
    const curves = workbenchCurves(fieldOf(1), 'FL', 80, pair, turned);
    expect(at(curves?.sum ?? [], 80)).toBeLessThan(-20);
    expectClose(at(curves?.sum ?? [], 400), 0, 0.1);
  });

  it('stand 3 dB higher where the sub alone is 3 dB louder', () => {
    const louder = { ...settings, trimDb: { 'Sub 1': 3 } };
    const curves = workbenchCurves(fieldOf(1), 'FL', 80, pair, louder);
    expectClose(at(curves?.sum ?? [], 16), 3, 0.02);
  });

  it('leave the speaker alone at full range', () => {
    const curves = workbenchCurves(fieldOf(1), 'FL', null, pair, settings);
    expect(curves?.subs).toBeNull();
    for (const db of curves?.sum ?? []) expectClose(db, 0, 1e-9);
  });

  it('are none for a speaker without bass, distance or sound', () => {
    expect(workbenchCurves(fieldOf(1), 'FC', 80, pair, settings)).toBeNull();
    const nowhere = { ...settings, distanceMetres: {} };
    expect(workbenchCurves(fieldOf(1), 'FL', 80, pair, nowhere)).toBeNull();
    expect(workbenchCurves(fieldOf(1, 0), 'FL', 80, pair, settings)).toBeNull();
  });
});

describe('the electrical filters', () => {
  it('are 6.02 dB down at the crossover, and the low-pass at its own besides', () => {
    const some = [40, 80, 160];
    const alone = filterCurves(some, 80, pair, { subLowPassHz: null, lowCutHz: null });
    // |H|² of the fourth order: (1 + w⁴)⁻²; at the crossover 1/4, an octave off 1/289 and 256/289.
    expectClose(alone.highPass, [-24.609, -6.0206, -0.5266], 0.001);
    expectClose(alone.lowPass, [-0.5266, -6.0206, -24.609], 0.001);
    const both = filterCurves(some, 80, pair, { subLowPassHz: 80, lowCutHz: null });
    expectClose(both.lowPass, [-1.0532, -12.0412, -49.218], 0.001);
  });
});
