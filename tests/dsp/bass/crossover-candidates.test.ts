import { describe, expect, it } from 'vitest';
import {
  crossoverCandidates,
  type CandidateSpeaker,
  type CandidateTerms,
} from '../../../dsp/bass/crossover-candidates';
import type { FilterSpec } from '../../../dsp/filter/analogue';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { directSound, echoes, hz } from './seat-responses';

const stepsHz = [40, 60, 80, 100, 120, 150];

const filter = (kind: FilterSpec['kind'], cutoffHz: number): FilterSpec => ({
  family: 'linkwitz-riley',
  kind,
  order: 4,
  cutoffHz,
});

const terms: CandidateTerms = {
  hz,
  stepsHz,
  filters: (crossoverHz) => ({
    highPass: [filter('high-pass', crossoverHz)],
    lowPass: [filter('low-pass', crossoverHz)],
  }),
  isBed: true,
};

const speaker = (name: string, given: Partial<CandidateSpeaker> = {}): CandidateSpeaker => ({
  name,
  f3Hz: 55,
  f6UpperHz: 50,
  lowest: null,
  seats: null,
  ...given,
});

const at = [0.01, 0.012, 0.009];

describe('crossoverCandidates', () => {
  it('puts the measured step first where the sums are alike', () => {
    const left = speaker('left', { seats: directSound(at) });
    const sub = { seats: directSound(at), upperHz: null };
    const { candidates, practiceHz, measuredHz, decidedBy } = crossoverCandidates(
      [left],
      sub,
      terms,
    );
    // 1.25 · 50 = 62.5 and 55 + 10 = 65.
    expect([practiceHz, measuredHz]).toEqual([80, 80]);
    expect(decidedBy).toEqual({ name: 'left', by: 'roll-off', neededHz: 62.5 });
    expect(candidates.map(({ stepHz }) => stepHz)).toEqual([80, 100, 120, 150, 60, 40]);
    const [first] = candidates;
    expect(first).toMatchObject({ practice: true, measured: true, breaks: [], localised: false });
    expectClose(
      first?.sum,
      {
        lossDb: 0,
        dip: { db: 0, hz: first?.sum?.dip.hz },
        delaySeconds: 0,
        inverted: false,
        worst: { name: 'left', lossDb: 0 },
      },
      0.001,
    );
    expectClose(first?.costDb, 3 * Math.log2(80 / 62.5), 0.001);
    expect(candidates.at(-1)?.breaks).toEqual(['roll-off']);
  });

  it('warns of a step in the bed that lets the sub be heard where it stands', () => {
    const found = (isBed: boolean): number[] =>
      crossoverCandidates([speaker('left')], null, { ...terms, isBed })
        .candidates.filter(({ localised }) => localised)
        .map(({ stepHz }) => stepHz);
    expect(found(true)).toEqual([150]);
    expect(found(false)).toEqual([]);
  });

  it('is decided by the speaker that needs most, or that distorts', () => {
    const lowest = {
      kind: 'told',
      hz: 95,
      interval: [90, 100],
      decidedBy: 'distortion',
    } as const;
    const speakers = [
      speaker('left'),
      speaker('right', { f6UpperHz: 60 }),
      speaker('centre', { lowest }),
    ];
    const found = crossoverCandidates(speakers, null, terms);
    expect(found.decidedBy).toEqual({ name: 'centre', by: 'distortion', neededHz: 95 });
    expect(found.measuredHz).toBe(80);
    expect(found.candidates[0]?.stepHz).toBe(100);
    const by = new Map(found.candidates.map(({ stepHz, breaks }) => [stepHz, breaks]));
    expect(by.get(80)).toEqual(['distortion']);
    expect(by.get(60)).toEqual(['roll-off', 'distortion']);
    // What was not reached, or cannot be told, asks for nothing.
    for (const free of [
      { kind: 'not reached', hz: 30 },
      { kind: 'cannot tell', passesTo: 90, hiddenBy: 'noise' },
    ] as const) {
      const { candidates } = crossoverCandidates([speaker('left', { lowest: free })], null, terms);
      expect(candidates[0]?.stepHz).toBe(80);
    }
  });

  it('keeps below the upper end of the sub', () => {
    const sub = { seats: directSound(at), upperHz: 90 };
    const { candidates } = crossoverCandidates(
      [speaker('left', { f6UpperHz: 70, seats: directSound(at) })],
      sub,
      terms,
    );
    // 87.5 Hz are needed and 90 are the most: 80 lies nearest, then 100.
    expect(candidates.slice(0, 2).map(({ stepHz }) => stepHz)).toEqual([80, 100]);
    expect(candidates[0]?.breaks).toEqual(['roll-off']);
    expect(candidates[1]?.breaks).toEqual(['sub reach']);
  });

  it('goes a step up only for a sum that is clearly better', () => {
    const random = seededRandom(11);
    for (let room = 0; room < 4; room++) {
      const speakers = ['left', 'right'].map((name) =>
        speaker(name, { seats: echoes(random, 3, 0.01) }),
      );
      const sub = { seats: echoes(random, 3, 0.008), upperHz: 200 };
      const { candidates } = crossoverCandidates(speakers, sub, terms);
      const [first] = candidates;
      const plain = candidates.find(({ stepHz }) => stepHz === 80);
      if (!first?.sum || !plain?.sum) throw new Error('both have a sum');
      const saved = plain.sum.lossDb - first.sum.lossDb;
      expect(saved).toBeGreaterThanOrEqual(3 * Math.log2(first.stepHz / 80) - 1e-9);
      expect(first.sum.worst.lossDb).toBeGreaterThanOrEqual(first.sum.lossDb - 1e-9);
    }
  });

  it('takes 80 Hz where nothing is known, and says that nobody decided', () => {
    const unknown = speaker('left', { f3Hz: null, f6UpperHz: null });
    const found = crossoverCandidates([unknown], null, terms);
    expect(found).toMatchObject({ practiceHz: 80, measuredHz: null, decidedBy: null });
    expect(found.candidates[0]).toMatchObject({ stepHz: 80, sum: null });
  });

  it('finds no step where all lie too low', () => {
    const found = crossoverCandidates([speaker('left', { f6UpperHz: 200 })], null, terms);
    expect(found.measuredHz).toBeNull();
    expect(found.candidates[0]).toMatchObject({ stepHz: 150, breaks: ['roll-off'] });
  });

  it('refuses steps that do not rise, and no speakers', () => {
    expect(() => crossoverCandidates([], null, terms)).toThrow(RangeError);
    for (const bad of [[], [80, 60], [0, 60]]) {
      expect(() =>
        crossoverCandidates([speaker('left')], null, { ...terms, stepsHz: bad }),
      ).toThrow(RangeError);
    }
  });
});
