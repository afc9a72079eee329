import { describe, expect, it } from 'vitest';
import { stepPrice } from '../../../components/propose/step-price';
import type { GroupProposal } from '../../../src/proposal/proposal';
import type { ChannelReading } from '../../../src/reading/reading';
import { emptyReading } from '../fixtures';
import { plain } from '../mount';

const proposal: GroupProposal = {
  group: 'sides',
  channels: ['SiL', 'SiR'],
  crossoverHz: 80,
  practiceHz: 80,
  measuredHz: 80,
  decidedBy: 'SiL',
  reason: '',
  warnings: [],
  alternatives: [],
  nearestHz: null,
  decidedByReading: 'roll-off',
  reasons: [],
  fullRange: { kind: 'too small', reasons: [] },
  own: null,
};
const decider: ChannelReading = {
  ...emptyReading('SiL'),
  curves: {
    response: { hz: [], db: [], noiseDb: [] },
    fit: { hz: [60, 80], db: [-3.2, -1.1], low: [-4.5, -2], high: [-2, 0.2] },
    envelope: { startSeconds: 0, stepSeconds: 1, level: [] },
  },
};
const price = (hz: number, reading: ChannelReading | null = decider, changes = {}) =>
  plain(stepPrice(hz, { ...proposal, ...changes }, reading));

describe('the price of another step', () => {
  it('is what the speaker lacks below the proposed one', () => {
    expect(price(60)).toBe(
      'At 60 Hz SiL is 3.2 dB down by itself (90 % between 2.0 and 4.5 dB), at the proposed 80 Hz 1.1 dB: the difference is missing around the crossover.',
    );
  });

  it('is what the subs carry above it, and where they begin to be heard', () => {
    expect(price(100)).toBe('The subs carry 20 Hz more than SiL needs.');
    expect(price(150)).toContain('Above 120 Hz a sub begins to be heard where it stands.');
  });

  it('is nothing for the proposed step', () => {
    expect(price(80)).toBe('');
  });

  it('is said without a fit, and without a proposal', () => {
    expect(price(60, null)).toContain('60 Hz lies 20 Hz below the proposed step');
    expect(price(60, decider, { crossoverHz: null })).toContain('your own judgement');
    expect(price(300, null, { crossoverHz: null, decidedBy: null })).toBe(
      'No step was proposed: 300 Hz is your own judgement.',
    );
  });
});
