import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { judgeInterval } from '../../../src/proof/judge-interval';
import { judgeProof } from '../../../src/proof/judge-proof';
import { layoutOf } from '../../components/fake-bench';
import { echoes, moved } from '../../dsp/comparison/echoes';
import { after, before, broken, flat, hz, layout, lineOf, prove, typed } from './told-proof';

describe('the claims of settings typed right', () => {
  const proof = prove({});

  it('all hold', () => {
    expect(broken(proof)).toEqual([]);
    expect(proof.counts).toEqual({ pass: proof.lines.length, fail: 0, 'cannot tell': 0 });
  });

  it('are one line each, with names of their own', () => {
    const ids = proof.lines.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    // Four speakers answer, have a polarity, arrival, level and response; three mains cross over
    // and send bass; LFE; nothing else plays.
    expect(ids).toHaveLength(5 * 4 + 2 * 3 + 2);
  });

  it('hold all the same at another volume', () => {
    const louder = after({ trimDb: { FL: 6, FR: 8, FC: 4.5, 'Sub 1': 3 } });
    const steps = defaultProcessorSteps;
    expect(broken(judgeProof({ layout, typed, steps, before, after: louder }))).toEqual([]);
  });
});

describe('an arrival', () => {
  it('holds within 0.1 ms and the rounding, and fails beyond', () => {
    // 0.1 ms, a step of 1 cm and a sample of 48 kHz: 0.150 ms, 5.1 cm.
    const id = 'arrival FR';
    expect(lineOf(prove({ distanceMetres: { FR: 2.6 + 0.045 } }), id).verdict).toBe('pass');
    const failed = lineOf(prove({ distanceMetres: { FR: 2.6 + 0.06 } }), id);
    expect(failed.verdict).toBe('fail');
    expect(failed.figure?.value).toBeCloseTo((-1000 * 0.06) / 343.2, 6);
    expect(failed.changes).toMatchObject([{ setting: 'distance', channels: ['FR'], to: 2.6 }]);
    expect(Number(failed.changes[0]?.from)).toBeCloseTo(2.66, 6);
  });

  it('cannot be told where its interval reaches over the limit', () => {
    const line = lineOf(prove({ half: 0.2e-3 }), 'arrival FC');
    expect(line.verdict).toBe('cannot tell');
    expect(line.action).not.toBeNull();
  });

  it('is allowed the rounding of coarse steps', () => {
    const steps = { ...defaultProcessorSteps, distanceStepMetres: 0.3048 };
    const coarse = after({ distanceMetres: { FR: 2.6 + 0.2 } });
    const line = lineOf(judgeProof({ layout, typed, steps, before, after: coarse }), 'arrival FR');
    expect(line.verdict).toBe('pass');
  });
});

describe('a level', () => {
  it('holds within 0.5 dB and the rounding, and fails beyond', () => {
    const id = 'level FC';
    expect(lineOf(prove({ trimDb: { FC: -1.5 + 0.6 } }), id).verdict).toBe('pass');
    const failed = lineOf(prove({ trimDb: { FC: -1.5 + 2 } }), id);
    expect(failed.verdict).toBe('fail');
    expect(failed.figure?.value).toBeCloseTo(2, 6);
    expect(failed.changes).toMatchObject([{ setting: 'trim', channels: ['FC'], to: -1.5 }]);
  });

  it('cannot be told where the noise leaves it too unsure', () => {
    const unsure = { levelInterval: [-21.5, -18.5] as const };
    const line = lineOf(prove({ readings: { FC: unsure } }), 'level FC');
    expect(line.verdict).toBe('cannot tell');
    const sure = lineOf(prove({ readings: { FC: { levelInterval: [-20.1, -19.9] } } }), 'level FC');
    expect(sure.verdict).toBe('pass');
  });

  it('that no trim reaches points to the amplifier', () => {
    const short = { ...typed, trimDb: { ...typed.trimDb, FR: -4 } };
    const line = lineOf(prove({ trimDb: { FR: -4 } }, short), 'level FR');
    expect(line.verdict).toBe('fail');
    expect(line.sentence).toContain('amplifier');
  });
});

describe('a response', () => {
  it('fails where it is shaped by more than 2 dB', () => {
    const bent = {
      ...flat,
      response: { ...flat.response, db: flat.response.hz.map((f) => (f > 3000 ? 4 : 0)) },
    };
    const line = lineOf(prove({ readings: { FC: { curves: bent } } }), 'response FC');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'equaliser or dynamics on' });
    expect(line.changes).toMatchObject([{ setting: 'equaliser and dynamics', channels: ['FC'] }]);
  });

  it('cannot be told without curves, nor where an equaliser is typed', () => {
    const bare = prove({ readings: { FC: { curves: null } } });
    expect(lineOf(bare, 'response FC').verdict).toBe('cannot tell');
    const shaped = prove({}, { ...typed, equalised: true });
    expect(lineOf(shaped, 'response FL').verdict).toBe('cannot tell');
  });
});

describe('a proof', () => {
  it('fails a speaker that stays silent, and names its wiring', () => {
    const silent = { kind: 'silent', sentence: 'Front right stays silent.' } as const;
    const line = lineOf(
      prove({
        readings: { FR: { faults: [silent], bass: null, levelDb: null, arrivalSeconds: null } },
      }),
      'answers FR',
    );
    expect(line).toMatchObject({ verdict: 'fail', slip: 'wrong wiring' });
  });

  it('finds who sounds instead', () => {
    const other = after({}).channels.find(({ channel }) => channel === 'FC');
    const line = lineOf(prove({ readings: { FR: { bass: other?.bass } } }), 'answers FR');
    expect(line).toMatchObject({
      verdict: 'fail',
      changes: [{ setting: 'wiring', from: 'FC', to: 'FR' }],
    });
  });

  it('finds a speaker that plays along', () => {
    const line = lineOf(prove({ along: { channel: 'FC', factor: 0.4 } }), 'nothing else all');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'upmixing on' });
    expect(line.changes).toMatchObject([{ setting: 'upmixing', channels: ['FC'] }]);
  });

  it('says without readings before what cannot be told, and fails nothing', () => {
    const steps = defaultProcessorSteps;
    const proof = judgeProof({ layout, typed, steps, before: null, after: after({}) });
    expect(proof.counts.fail).toBe(0);
    expect(lineOf(proof, 'arrival FR').verdict).toBe('pass');
    const untold = proof.lines.filter(({ verdict }) => verdict === 'cannot tell');
    expect(untold.map(({ claim }) => claim)).toContain('crossover');
    for (const { action } of untold) expect(action).toMatch(/\.$/);
  });

  it('holds nothing that is no number', () => {
    const text = JSON.stringify(prove({ readings: { FR: { bass: null } } }), (_, value: unknown) =>
      typeof value === 'number' && !Number.isFinite(value) ? 'no number' : value,
    );
    expect(text).not.toContain('no number');
  });

  it('refuses readings of another layout', () => {
    const steps = defaultProcessorSteps;
    const other = layoutOf('2.0');
    expect(() => judgeProof({ layout: other, typed, steps, before, after: before })).toThrow(
      RangeError,
    );
  });
});

describe('an interval', () => {
  it.each([
    [[-1, 1], 'pass'],
    [[-2, 2], 'pass'],
    [[1, 3], 'cannot tell'],
    [[-3, 3], 'cannot tell'],
    [[2.1, 3], 'fail'],
    [[-3, -2.1], 'fail'],
  ] as const)('of %j within ±2: %s', (interval, verdict) => {
    expect(judgeInterval({ interval, allowed: [-2, 2] })).toBe(verdict);
  });
});

describe('a microphone that stands elsewhere', () => {
  /** Every main's own sound with echoes of another place. */
  const elsewhere = (share: number) => {
    const readings = after({});
    const channels = readings.channels.map((reading, at) => {
      const other = moved(echoes(90 + at, hz, share * 0.1), hz, 1, 0.011);
      const bass = reading.bass && {
        re: reading.bass.re.map((x, k) => x + (other.re[k] ?? 0)),
        im: reading.bass.im.map((x, k) => x + (other.im[k] ?? 0)),
      };
      return reading.channel === 'Sub 1' ? reading : { ...reading, bass };
    });
    const steps = defaultProcessorSteps;
    return judgeProof({ layout, typed, steps, before, after: { ...readings, channels } });
  };

  it('is told, and leaves what it makes unsure untold instead of failing it', () => {
    const proof = elsewhere(0.5);
    expect(proof.notes[0]).toMatch(/^The microphone seems to stand about \d+ cm from/);
    const untold = proof.lines.filter(({ verdict }) => verdict === 'cannot tell');
    expect(untold.map(({ claim }) => claim)).toContain('arrival');
    expect(lineOf(proof, 'arrival FR').action).toMatch(/^Put it where it stood/);
  });

  it('is not suspected where responses are as before', () => {
    expect(prove({}).notes).toEqual([]);
    expect(elsewhere(0.01).notes).toEqual([]);
  });
});
