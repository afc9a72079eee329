import { describe, expect, it } from 'vitest';
import { drawPracticeSlip } from '../../../src/rig/draw-practice-slip';
import { slipInTyping } from '../../../src/rig/practice-slips';
import { factorySettings } from '../../../src/system/processor-settings';
import { layoutOf } from '../../components/fake-bench';

const shares = Array.from({ length: 100 }, (_, k) => k / 100);
const typed = {
  ...factorySettings,
  distanceMetres: { FL: 2.4, FR: 2.4, FC: 2.2, SiL: 1.8, SiR: 2.1, 'Sub 1': 3 },
  trimDb: { FL: 0, FR: 0.5, FC: -1.5, SiL: 0, SiR: 0, 'Sub 1': 0 },
  crossoverHz: { fronts: 80, centre: 80, sides: null },
} as const;
const kindsOf = (name: string, settings: typeof typed | null): string[] => {
  const drawn = shares.map((share) => drawPracticeSlip(layoutOf(name), settings, share).kind);
  return [...new Set<string>(drawn)].sort();
};

describe('a slip drawn for practice', () => {
  it('is any of those that do harm in the room', () => {
    expect(kindsOf('5.1', typed)).toEqual([
      'LFE level',
      'dynamics',
      'equaliser',
      'full range',
      'inverted',
      'own low-pass',
      'upmixing',
      'wrong side',
      'wrong sign',
      'wrong unit',
    ]);
  });

  it('changes what is counted with, where it is one of typing', () => {
    for (const share of shares) {
      const slip = drawPracticeSlip(layoutOf('5.1'), typed, share);
      const shaping = ['dynamics', 'equaliser', 'own low-pass', 'upmixing'].includes(slip.kind);
      if (!shaping) expect(slipInTyping(typed, [slip])).not.toEqual(typed);
    }
  });

  it('takes the pair whose sides differ, and a crossover that is set', () => {
    const drawn = shares.map((share) => drawPracticeSlip(layoutOf('5.1'), typed, share));
    for (const slip of drawn) {
      if (slip.kind === 'wrong side') expect(['SiL', 'SiR']).toContain(slip.channels[0]);
      if (slip.kind === 'wrong sign') expect(slip.channels).toEqual(['FC']);
      if (slip.kind === 'full range') expect(slip.group).not.toBe('sides');
    }
  });

  it('needs no numbers, no sub and no centre', () => {
    expect(kindsOf('2.0', null)).toEqual(['dynamics', 'equaliser']);
  });

  it.each([-0.1, 1, NaN])('is refused for the share %s', (share) => {
    expect(() => drawPracticeSlip(layoutOf('5.1'), typed, share)).toThrow(RangeError);
  });
});
