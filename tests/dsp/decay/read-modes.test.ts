import { describe, expect, it } from 'vitest';
import { readModes } from '../../../dsp/decay/read-modes';
import { expectClose } from '../../close';
import { ringing, type Ring } from './ringing';

const three: readonly Ring[] = [
  { hz: 31, seconds: 1.1, amplitude: 1, phase: 0.4 },
  { hz: 47.3, seconds: 0.8, amplitude: 0.7, phase: 2 },
  { hz: 71.6, seconds: 0.6, amplitude: 0.8, phase: 5 },
];

function modesOf(rings: readonly Ring[], noise: number, seed = 1) {
  const options = { noise: ringing([], noise, seed + 100), arrivalSeconds: 0, toHz: 160 };
  return readModes(ringing(rings, noise, seed), options);
}

describe('readModes', () => {
  it('finds each mode and how long it rings', () => {
    for (const noise of [1e-6, 1e-3]) {
      const modes = modesOf(three, noise);
      expect(modes).toHaveLength(3);
      modes.forEach(({ hz, seconds, interval, sentence }, n) => {
        const ring = three[n] ?? { hz: 0, seconds: 0 };
        expectClose(hz, ring.hz, 0.3, 'the slope of a neighbour moves a peak');
        expectClose((seconds ?? 0) / ring.seconds, 1, 0.05, 'what is left of neighbours');
        expect(interval?.[0]).toBeLessThan(ring.seconds);
        expect(interval?.[1]).toBeGreaterThan(ring.seconds);
        expect(sentence).toBeNull();
      });
    }
  });

  const pair = (gapHz: number): readonly Ring[] => [
    { hz: 50, seconds: 1, amplitude: 1 },
    { hz: 50 + gapHz, seconds: 1, amplitude: 0.8 },
  ];

  it('tells no time for two modes so near that they make one peak and beat', () => {
    const modes = modesOf(pair(2), 1e-5);
    expect(modes.map(({ seconds, interval }) => [seconds, interval])).toEqual([[null, null]]);
    expect(modes[0]?.sentence).toContain('as two modes do that beat');
  });

  it('parts two modes that make two peaks', () => {
    const modes = modesOf(pair(4), 1e-5);
    expectClose(
      modes.map(({ seconds }) => seconds),
      [1, 1],
      0.05,
      'what is left of the neighbour',
    );
  });

  it('tells no time where too little stands clear of the noise', () => {
    const [mode] = modesOf([{ hz: 40, seconds: 0.5, amplitude: 1 }], 1);
    expect(mode?.seconds).toBeNull();
    expect(mode?.sentence).toContain('More level would settle it.');
  });

  it('tells no time for a mode as short as its filter rings', () => {
    const [mode] = modesOf([{ hz: 40, seconds: 0.2, amplitude: 1 }], 1e-7);
    expect(mode?.seconds).toBeNull();
    expect(mode?.sentence).toContain('No ring-out at');
  });

  it('keeps below the frequency given, and finds nothing in silence', () => {
    const options = { noise: null, arrivalSeconds: 0, toHz: 60 };
    expect(readModes(ringing(three, 1e-6, 1), options)).toHaveLength(2);
    const silent = { samples: new Float64Array(48_000), sampleRate: 48_000, zeroIndex: 0 };
    expect(readModes(silent, options)).toHaveLength(0);
    expect(() => readModes(silent, { noise: null, toHz: 10 })).toThrow(RangeError);
  });
});
