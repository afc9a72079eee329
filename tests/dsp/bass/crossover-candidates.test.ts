import { describe, expect, it } from 'vitest';
import { scanAlignment } from '../../../dsp/bass/align-sub';
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
        distanceDb: 0,
        worst: { name: 'left', lossDb: 0 },
      },
      0.001,
    );
    expectClose(first?.costDb, 0.1 * Math.log2(80 / 62.5), 0.001);
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

  it('goes up only where the sum saves more than what counts against it', () => {
    const random = seededRandom(11);
    let higher = 0;
    for (let room = 0; room < 8; room++) {
      const speakers = [speaker('left', { f6UpperHz: 40, seats: echoes(random, 2, 0.01) })];
      const sub = { seats: echoes(random, 2, 0.008), upperHz: 200 };
      const { candidates } = crossoverCandidates(speakers, sub, terms);
      const [first] = candidates;
      const plain = candidates.find(({ stepHz }) => stepHz === 60);
      if (!first?.sum || !plain?.sum) throw new Error('both have a sum');
      const lost = ({ lossDb, distanceDb }: typeof plain.sum): number => lossDb + distanceDb;
      const heard = Math.max(0, Math.log2(first.stepHz / 120)) ** 2;
      const moved = first.stepHz > 60 ? 0.05 : 0;
      const against = moved + 0.1 * Math.log2(first.stepHz / 60) + heard;
      expect(lost(plain.sum) - lost(first.sum)).toBeGreaterThanOrEqual(against - 1e-9);
      expect(first.sum.worst.lossDb).toBeGreaterThanOrEqual(first.sum.lossDb - 1e-9);
      if (first.stepHz > 60) higher++;
    }
    expect(higher).toBeGreaterThan(0);
    expect(higher).toBeLessThan(8);
  });

  it('counts more against steps at which a sub of the bed is localised', () => {
    const cost = (isBed: boolean, stepHz: number): number =>
      crossoverCandidates([speaker('left')], null, { ...terms, isBed }).candidates.find(
        (one) => one.stepHz === stepHz,
      )?.costDb ?? NaN;
    for (const step of [80, 100, 120]) expectClose(cost(true, step), cost(false, step), 1e-9);
    expectClose(cost(true, 150) - cost(false, 150), Math.log2(150 / 120) ** 2, 1e-9);
  });

  it('does not take a step for want of a sum there', () => {
    // A sub that carries nothing above 85 Hz: above 100 no delay can be told.
    const low = directSound(at).map(({ re, im }) => {
      const gain = (f: number): number => (f < 85 ? 0.5 : 1e-3);
      return {
        re: re.map((x, k) => x * gain(hz[k] ?? 0)),
        im: im.map((x, k) => x * gain(hz[k] ?? 0)),
      };
    });
    const left = speaker('left', { seats: directSound(at) });
    const { candidates } = crossoverCandidates([left], { seats: low, upperHz: null }, terms);
    const untold = candidates.filter(({ sum }) => sum === null).map(({ stepHz }) => stepHz);
    expect(untold).not.toEqual([]);
    expect(candidates[0]?.sum).not.toBeNull();
    for (const one of candidates.filter(({ breaks }) => breaks.length === 0)) {
      if (one.sum === null) expect(one.costDb).toBeGreaterThan(candidates[0]?.costDb ?? Infinity);
    }
  });

  it('sets a sub near where the arrivals line up that were read', () => {
    // No onset tells which of two equal arrivals of the sub is the direct one; what was read does.
    const left = speaker('left', { seats: directSound(at) });
    const twice = directSound(at).map((one, seat) => {
      const late = directSound(at.map((seconds) => seconds + 0.02))[seat];
      return {
        re: one.re.map((x, k) => x + (late?.re[k] ?? 0)),
        im: one.im.map((x, k) => x + (late?.im[k] ?? 0)),
      };
    });
    const delay = (arrivalDelaySeconds?: number): number => {
      const sub = { seats: twice, upperHz: null };
      const given = arrivalDelaySeconds === undefined ? sub : { ...sub, arrivalDelaySeconds };
      const { candidates } = crossoverCandidates([left], given, terms);
      return candidates[0]?.sum?.delaySeconds ?? NaN;
    };
    expect(delay(-0.02)).toBeLessThan(delay(0));
  });

  it('judges the steps with the sub as another group has set it', () => {
    const left = speaker('left', { seats: directSound(at) });
    // Half a period late at 100 Hz, where both add to nothing; a whole one late at 80.
    const setAt = (stepHz: number) =>
      stepHz === 120
        ? null
        : { delaySeconds: stepHz === 100 ? 0.005 : 1 / stepHz, inverted: false, lossDb: 99 };
    const sub = { seats: directSound(at), upperHz: null, setAt };
    const { candidates } = crossoverCandidates([left], sub, terms);
    const sumAt = (hz: number) => candidates.find(({ stepHz }) => stepHz === hz)?.sum;
    const plain = { hz, crossoverHz: 100, ...terms.filters(100) };
    const scan = scanAlignment([{ seats: directSound(at) }], directSound(at), plain);
    const late = { delaySeconds: 0.005, inverted: false };
    expectClose(sumAt(100)?.lossDb, scan.lossDb(late), 1e-9);
    expect(sumAt(100)).toMatchObject({ ...late, distanceDb: 0 });
    expect(sumAt(100)?.lossDb).toBeGreaterThan(3);
    expect(sumAt(80)?.delaySeconds).toBe(1 / 80);
    expect(sumAt(120)).toBeNull();
    expect(candidates[0]?.stepHz).not.toBe(120);
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
