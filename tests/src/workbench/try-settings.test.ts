import { describe, expect, it } from 'vitest';
import { nothingChosen, type ProposalChoices } from '../../../src/proposal/choices';
import type { BassSettings } from '../../../src/proposal/bass-settings';
import type { GroupProposal } from '../../../src/proposal/proposal';
import type { SubsProposal } from '../../../src/proposal/subs-proposal';
import { hzWith, trySettings } from '../../../src/workbench/try-settings';
import { expectClose } from '../../close';

function group(name: 'fronts' | 'sides', crossoverHz: number | null): GroupProposal {
  return {
    group: name,
    channels: name === 'fronts' ? ['FL', 'FR'] : ['SiL', 'SiR'],
    crossoverHz,
    nearestHz: crossoverHz === null ? 200 : null,
    practiceHz: null,
    measuredHz: null,
    decidedBy: null,
    decidedByReading: null,
    reason: '',
    reasons: [],
    warnings: [],
    alternatives: [],
    fullRange: { kind: 'possible', reasons: [] },
    own: null,
  };
}

const settings: BassSettings = {
  crossoverHz: { fronts: 60, sides: 200 },
  distanceMetres: { FL: 2.4, 'Sub 1': 3.1 },
  trimDb: { FL: 0, 'Sub 1': -4 },
  inverted: ['Sub 1'],
  subLowPassHz: 150,
  lowCutHz: 20,
  metresPerSecond: 340,
};
const subs: SubsProposal = {
  subs: [{ channel: 'Sub 1', wishedMetres: 3.1, gainDb: 0, polarity: 'inverted' }],
  alignment: null,
  spread: null,
  bassPreferenceDb: 0,
  upperHz: null,
  lowPass: { hz: 150, costDb: 0, reasons: [] },
  lowCut: { hz: 20, costDb: 0, reasons: [] },
  phase: [],
  reasons: [],
};
const proposal = { settings, groups: [group('fronts', 60), group('sides', null)], subs };
const own = (change: Partial<ProposalChoices>): ProposalChoices => ({
  ...nothingChosen,
  ...change,
});

describe('settings that are tried', () => {
  it('are those typed while nothing else is chosen', () => {
    expect(trySettings(proposal, nothingChosen, nothingChosen)).toEqual(settings);
  });

  it('take the tuner’s crossover, full range, and for want of a better the nearest step', () => {
    const [fronts, sides] = proposal.groups;
    if (!fronts || !sides) throw new RangeError('no groups');
    expect(hzWith(sides, nothingChosen)).toBe(200);
    expect(hzWith(fronts, own({ crossoverHz: { fronts: 90 } }))).toBe(90);
    expect(hzWith(fronts, own({ crossoverHz: { fronts: 90 }, fullRange: ['fronts'] }))).toBeNull();
  });

  it('bring the subs nearer to be later: 1 ms at 340 m/s is 0.34 m', () => {
    const tried = trySettings(proposal, nothingChosen, own({ subsLaterSeconds: 0.001 }));
    expectClose(tried.distanceMetres['Sub 1'] ?? 0, 2.76, 1e-12);
    expect(tried.distanceMetres.FL).toBe(2.4);
    const back = trySettings(proposal, own({ subsLaterSeconds: 0.001 }), nothingChosen);
    expectClose(back.distanceMetres['Sub 1'] ?? 0, 3.44, 1e-12);
  });

  it('turn the subs over against what they were made with, and back', () => {
    expect(trySettings(proposal, nothingChosen, own({ subsTurned: true })).inverted).toEqual([]);
    const turned = { ...proposal, settings: { ...settings, inverted: [] } };
    expect(trySettings(turned, own({ subsTurned: true }), nothingChosen).inverted).toEqual([
      'Sub 1',
    ]);
  });

  it('lift the subs alone by the bass preference', () => {
    const tried = trySettings(proposal, own({ bassPreferenceDb: 1 }), own({ bassPreferenceDb: 4 }));
    expect(tried.trimDb).toEqual({ FL: 0, 'Sub 1': -1 });
  });

  it('take the tuner’s filters of the subs, and off for off', () => {
    const tried = trySettings(proposal, nothingChosen, own({ subLowPassHz: 120, lowCutHz: 'off' }));
    expect([tried.subLowPassHz, tried.lowCutHz]).toEqual([120, null]);
  });
});
