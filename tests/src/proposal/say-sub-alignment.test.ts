import { describe, expect, it } from 'vitest';
import type { SubAlignment } from '../../../dsp/bass/align-sub';
import { saySubAlignment } from '../../../src/proposal/say-sub-alignment';

const figures = { lossDb: 0.62, seatLossDb: [0.6, 0.64, 0.62], dip: { db: -2, hz: 80 } };

const found: SubAlignment = {
  kind: 'told',
  delaySeconds: 0.0037,
  inverted: false,
  ...figures,
  unchanged: false,
  wired: { ...figures, lossDb: 2.3 },
  alternatives: [],
  toleranceSeconds: [0.003, 0.0042],
  interval: [0.0031, 0.0043],
  centreSeconds: 0.004,
  doubt: null,
};

describe('saySubAlignment', () => {
  it('says delay, interval, polarity, and what is lost and was', () => {
    expect(saySubAlignment('sub 1', 80, found)).toBe(
      'Sub 1 3.7 ms later (90 % between 3.1 and 4.3 ms), its polarity as it is: 0.6 dB of the energy about 80 Hz is lost, 2.3 dB as it is set now.',
    );
  });

  it('says that a polarity is no fault of the wires, and what settles a doubt', () => {
    const turned = saySubAlignment('sub 1', 80, {
      ...found,
      delaySeconds: -0.002,
      inverted: true,
      interval: null,
      doubt: 'few seats',
    });
    expect(turned).toContain('Sub 1 2.0 ms earlier, its polarity turned over:');
    expect(turned).toContain('This says nothing of how the sub is wired.');
    expect(turned).toContain('It rests on fewer than three seats: measure more seats.');
  });

  it('says why what is set now does not stay though it loses less', () => {
    const why = 'As it is set now less is lost, but by more than a period of the crossover';
    const wired = { ...figures, lossDb: 0.4 };
    expect(saySubAlignment('sub 1', 80, { ...found, wired })).toContain(why);
    expect(saySubAlignment('sub 1', 80, found)).not.toContain(why);
  });

  it('says that nothing better was found', () => {
    expect(saySubAlignment('sub 1', 80, { ...found, unchanged: true })).toBe(
      'Sub 1 stays as it is set: 0.6 dB of the energy about 80 Hz is lost, and no other delay loses less.',
    );
  });

  it('says why nothing can be told, and the one thing to do', () => {
    const none = { kind: 'cannot tell' } as const;
    expect(
      saySubAlignment('sub 1', 80, {
        ...none,
        why: 'noise',
        quieter: null,
        action: 'measure louder',
      }),
    ).toBe(
      'No delay can be told for sub 1: the noise hides the phase about 80 Hz. Measure again 10 dB louder.',
    );
    expect(
      saySubAlignment('sub 1', 80, {
        ...none,
        why: 'no overlap',
        quieter: 'mains',
        action: 'set levels first',
      }),
    ).toBe(
      'No delay can be told for sub 1: about 80 Hz the mains are more than 20 dB quieter than it, so that no delay matters. Set the levels first.',
    );
  });
});
