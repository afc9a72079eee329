import { describe, expect, it } from 'vitest';
import { lineOf, prove, typed } from './told-proof';

const metres = typed.distanceMetres;

describe('distances', () => {
  it('typed for the wrong side are named', () => {
    const proof = prove({ distanceMetres: { FL: 2.6, FR: 2.4 } });
    for (const label of ['FL', 'FR']) {
      const line = lineOf(proof, `arrival ${label}`);
      expect(line).toMatchObject({ verdict: 'fail', slip: 'wrong side' });
    }
    const [one, other] = lineOf(proof, 'arrival FR').changes;
    expect(one).toMatchObject({ channels: ['FL'], to: 2.4 });
    expect(other).toMatchObject({ channels: ['FR'], to: 2.6 });
    expect(Number(one?.from)).toBeCloseTo(2.6, 9);
  });

  it.each([
    ['feet', 1 / 0.3048],
    ['metres', 0.3048],
  ])('all taken in the wrong unit are named (%s typed)', (_unit, factor) => {
    const scaled = Object.fromEntries(
      Object.entries(metres).map(([label, value]) => [label, factor * value]),
    );
    const proof = prove({ distanceMetres: scaled });
    const failed = proof.lines.filter(
      ({ claim, verdict }) => claim === 'arrival' && verdict === 'fail',
    );
    expect(failed.length).toBeGreaterThan(1);
    for (const { slip, changes } of failed) {
      expect(slip).toBe('feet for metres');
      expect(changes.map(({ channels: [label] }) => label)).toEqual(['FL', 'FR', 'FC', 'Sub 1']);
    }
  });

  it('of which one is in feet are named', () => {
    const line = lineOf(prove({ distanceMetres: { FC: 2.2 / 0.3048 } }), 'arrival FC');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'feet for metres' });
    expect(Number(line.changes[0]?.from)).toBeCloseTo(7.22, 2);
  });

  it('of the reference speaker fail its own line, not the others', () => {
    const proof = prove({ distanceMetres: { FL: 3 } });
    expect(lineOf(proof, 'arrival FL').verdict).toBe('fail');
    for (const label of ['FR', 'FC']) {
      expect(lineOf(proof, `arrival ${label}`).verdict).toBe('pass');
      expect(lineOf(proof, `crossover ${label}`).verdict).toBe('pass');
    }
  });

  it('of a sub are told by its phase', () => {
    const line = lineOf(prove({ distanceMetres: { 'Sub 1': 3 } }), 'arrival Sub 1');
    expect(line).toMatchObject({ verdict: 'fail', slip: null });
    expect(Number(line.changes[0]?.from)).toBeCloseTo(3, 2);
  });
});

describe('trims', () => {
  it('with the wrong sign are named', () => {
    const line = lineOf(prove({ trimDb: { FR: -2 } }), 'level FR');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'wrong sign' });
    expect(line.changes).toMatchObject([{ channels: ['FR'], from: -2, to: 2 }]);
  });

  it('all with the wrong sign are named together', () => {
    const proof = prove({ trimDb: { FR: -2, FC: 1.5, 'Sub 1': 3 } });
    const failed = proof.lines.filter(
      ({ claim, verdict }) => claim === 'level' && verdict === 'fail',
    );
    expect(failed.length).toBeGreaterThan(1);
    for (const { slip } of failed) expect(slip).toBe('wrong sign');
  });

  it('of a sub with the wrong sign are named', () => {
    const line = lineOf(prove({ trimDb: { 'Sub 1': 3 } }), 'level Sub 1');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'wrong sign' });
  });
});

describe('crossovers', () => {
  it('left on full range fail the sum and the bass of the group, and are named', () => {
    const proof = prove({ crossoverHz: { FL: null, FR: null } });
    for (const id of ['crossover FL', 'redirected bass FL', 'crossover FR', 'redirected bass FR']) {
      const line = lineOf(proof, id);
      expect(line).toMatchObject({ verdict: 'fail', slip: 'left on full range' });
      expect(line.changes).toMatchObject([
        { setting: 'crossover', group: 'fronts', from: 'full range', to: 80 },
      ]);
    }
    expect(lineOf(proof, 'crossover FC').verdict).toBe('pass');
  });

  it('at another step are named', () => {
    const line = lineOf(prove({ crossoverHz: { FC: 150 } }), 'crossover FC');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'another crossover' });
    expect(line.changes).toMatchObject([{ group: 'centre', from: 150, to: 80 }]);
  });
});

describe('the sub', () => {
  it('turned over is named', () => {
    const line = lineOf(prove({ inverted: ['Sub 1'] }), 'polarity Sub 1');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'inverted' });
  });

  it('with a low-pass of its own is named', () => {
    const line = lineOf(prove({ subLowPassHz: 60 }), 'response Sub 1');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'own low-pass on' });
    expect(Number(line.changes[0]?.from)).toBeGreaterThan(57);
    expect(Number(line.changes[0]?.from)).toBeLessThan(63);
  });

  it('without the 10 dB of LFE fails LFE alone', () => {
    const proof = prove({ lfeDb: -10 });
    const line = lineOf(proof, 'LFE LFE');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'LFE level' });
    expect(line.figure?.value).toBeCloseTo(-10, 1);
    expect(lineOf(proof, 'level Sub 1').verdict).toBe('pass');
    expect(lineOf(proof, 'crossover FL').verdict).toBe('pass');
  });

  it('too loud by LFE alone points to dynamics', () => {
    const line = lineOf(prove({ lfeDb: 5 }), 'LFE LFE');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'equaliser or dynamics on' });
  });
});

describe('a speaker', () => {
  it('that is turned over is named, beside what it was before', () => {
    const line = lineOf(prove({ inverted: ['FC'] }), 'polarity FC');
    expect(line).toMatchObject({ verdict: 'fail', slip: 'inverted' });
  });

  it('that pushed before and that the settings turn over fails', () => {
    const wanted = { ...typed, inverted: ['FC'] as const };
    expect(lineOf(prove({ inverted: ['FC'] }, wanted), 'polarity FC').verdict).toBe('fail');
  });
});

it('every failed line says what to change', () => {
  for (const done of [
    { distanceMetres: { FC: 3 } },
    { trimDb: { 'Sub 1': 5 } },
    { inverted: ['Sub 1'] as const },
    { crossoverHz: { FL: 60 } },
  ]) {
    for (const line of prove(done).lines) {
      if (line.verdict === 'fail') expect(line.changes, line.sentence).not.toEqual([]);
      else expect(line.changes).toEqual([]);
      expect(line.action === null).toBe(line.verdict !== 'cannot tell');
    }
  }
});
