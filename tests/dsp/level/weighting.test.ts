import { describe, expect, it } from 'vitest';
import { weightingDb } from '../../../dsp/level/weighting';
import { expectClose } from '../../close';

describe('weightingDb', () => {
  it('is 0 dB at 1 kHz whatever the weighting', () => {
    expectClose(
      (['A', 'C', 'Z'] as const).map((kind) => weightingDb(kind, 1000)),
      [0, 0, 0],
      1e-12,
    );
  });

  it('leaves everything alone for Z', () => {
    expect(weightingDb('Z', 20)).toBe(0);
  });

  it('falls by 24 dB an octave at the very bottom of A, 12 of C, and 12 at the top of both', () => {
    const slope = (kind: 'A' | 'C', hz: number): number =>
      weightingDb(kind, 2 * hz) - weightingDb(kind, hz);
    const octave = 40 * Math.log10(2);
    expectClose([slope('A', 0.1), slope('C', 0.1)], [2 * octave, octave], 0.01);
    expectClose([slope('A', 1e6), slope('C', 1e6)], [-octave, -octave], 0.01);
  });

  it('stays a number at 0 Hz and refuses what is no frequency', () => {
    expect(weightingDb('A', 0)).toBe(-300);
    for (const hz of [-1, NaN, Infinity]) {
      expect(() => weightingDb('A', hz)).toThrow(RangeError);
    }
  });
});
