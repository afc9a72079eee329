import { describe, expect, it } from 'vitest';
import { nothingChosen, type ProposalChoices } from '../../../src/proposal/choices';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import type { GroupProposal, Proposal } from '../../../src/proposal/proposal';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { GroupId } from '../../../src/system/channel';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';
import { sampleSheet } from './sample-sheet';

function propose(
  readings: Readings,
  changes: Partial<ProcessorSheet> = {},
  choices: Partial<ProposalChoices> = {},
): Proposal {
  const proposal = proposeSettings(readings, layoutNamed(readings.layout), defaultProcessorSteps, {
    sheet: sampleSheet(changes),
    choices: { ...nothingChosen, ...choices },
  });
  if (isTrouble(proposal)) throw new Error(proposal.sentence);
  return proposal;
}

function groupOf({ groups }: Proposal, group: GroupId): GroupProposal | undefined {
  return groups.find((one) => one.group === group);
}

const deep: Partial<ChannelReading> = { rolloff: rolloffAt(24, 20) };
const small: Partial<ChannelReading> = { rolloff: rolloffAt(110, 95) };

describe('what rounding costs', () => {
  it('is told in milliseconds and in decibels at the crossover', () => {
    const distance = { unit: 'm' as const, step: 0.5, low: 0, high: 18 };
    const readings = readingsOf('2.1', { FR: { distanceMetres: 2.7 }, 'Sub 1': deep });
    const fr = propose(readings, { distance }).channels.find(({ channel }) => channel === 'FR');
    // 0.2 m at 343.2 m/s is 0.5828 ms; two sides so far apart at 70 Hz (1.25 · 52.5 = 65.6 → 70):
    // −20 log cos(π · 70 · 0.0005828) = 0.0716 dB.
    expect(fr?.distance?.value).toBe(2.5);
    expectClose(fr?.distance?.costMs, 0.5828, 1e-3);
    expectClose(fr?.distance?.costDb, 0.0716, 1e-3);
  });

  it('is told in the unit of the processor', () => {
    const distance = { unit: 'ft' as const, step: 0.5, low: 0, high: 60 };
    const fr = propose(readingsOf('2.0', { FR: { distanceMetres: 2.5 } }), { distance })
      .channels[1];
    // 2.50 m is 8.202 ft; 8.0 ft is 2.4384 m.
    expect(fr?.distance).toMatchObject({ value: 8, unit: 'ft', step: 0.5 });
    expectClose(fr?.distanceMetres, 2.4384, 1e-9);
    expect(fr?.distanceReason).toContain('Rounding to 0.50 ft');
  });
});

describe('a processor that can do little', () => {
  it('with one crossover for all gives all the highest that is asked for, and says whose it is', () => {
    const { stepsHz, limits } = sampleSheet().crossover;
    const crossover = { stepsHz, limits, setting: 'one for all' as const };
    // 1.25 · 1.05 · 95 = 124.7 → 130 Hz.
    const proposal = propose(readingsOf('3.1', { FC: small, 'Sub 1': deep }), { crossover });
    expect(proposal.groups.map(({ crossoverHz }) => crossoverHz)).toEqual([130, 130]);
    expect(groupOf(proposal, 'fronts')?.reason).toContain(
      'one crossover for all, and the centre ask for 130 Hz',
    );
  });

  it('with only 80 Hz types 80 Hz and names what is missing', () => {
    const crossover = { stepsHz: [80], limits: [], setting: 'per group' as const };
    const proposal = propose(readingsOf('3.1', { FC: small, 'Sub 1': deep }), { crossover });
    expect(groupOf(proposal, 'centre')).toMatchObject({ crossoverHz: null, nearestHz: 80 });
    expect(proposal.settings.crossoverHz.centre).toBe(80);
    expect(proposal.missing).toContainEqual(
      expect.objectContaining({ what: 'crossover', channel: 'FC' }),
    );
  });

  it('without a trim to speak of types 0 dB and says what stays', () => {
    const level = { stepDb: 1, lowDb: -0.5, highDb: 0.5 };
    const proposal = propose(readingsOf('2.0', { FR: { levelDb: -26 } }), { level });
    expect(proposal.channels.map((one) => one.levelTrimDb)).toEqual([0, 0]);
    expect(proposal.channels[1]?.warnings.join()).toContain('stays 4.0 dB too loud');
  });

  it('keeps the bed’s crossovers at or below the highest low-pass where its sheet says so', () => {
    const subLowPass = { stepsHz: [80, 100], notBelowHighestBedCrossover: true };
    const proposal = propose(readingsOf('3.1', { FC: small, 'Sub 1': deep }), { subLowPass });
    expect(groupOf(proposal, 'centre')?.nearestHz).toBe(100);
    expect(proposal.settings.subLowPassHz).toBe(100);
  });
});

describe('full range', () => {
  const full = (readings: Readings, group: GroupId, choices: Partial<ProposalChoices> = {}) =>
    groupOf(propose(readings, {}, choices), group)?.fullRange;

  it('is possible for fronts that reach as low as is needed, which changes two-channel music', () => {
    const advice = full(readingsOf('3.1', { FL: deep, FR: deep, 'Sub 1': deep }), 'fronts');
    expect(advice?.kind).toBe('possible');
    const said = advice?.reasons.map(({ sentence }) => sentence).join(' ');
    expect(said).toContain('two-channel music leaves the subs silent');
    expect(said).toContain('Only then can the centre, side surrounds, back surrounds and wides');
  });

  it('is locked for others until the fronts run full range, too small or not offered', () => {
    const readings = readingsOf('3.1.2', { FC: deep, FL: small, 'Sub 1': deep });
    expect(full(readings, 'centre')?.kind).toBe('locked');
    expect(full(readings, 'centre', { fullRange: ['fronts'] })?.kind).toBe('possible');
    expect(full(readings, 'fronts')?.kind).toBe('too small');
    expect(full(readings, 'front heights')?.kind).toBe('not offered');
    const unknown = readingsOf('2.1', { FL: { rolloff: null }, 'Sub 1': deep });
    expect(full(unknown, 'fronts')?.kind).toBe('cannot tell');
  });

  it('is forced without subs: fronts carry the bass of what reaches less low', () => {
    const proposal = propose(readingsOf('5.0', { FL: deep, FR: deep, FC: small }));
    expect(groupOf(proposal, 'fronts')).toMatchObject({ crossoverHz: null });
    expect(groupOf(proposal, 'fronts')?.fullRange.kind).toBe('forced');
    expect(groupOf(proposal, 'centre')).toMatchObject({ crossoverHz: 130, decidedBy: 'FC' });
    expect(groupOf(proposal, 'centre')?.reason).toContain(
      "The fronts reach down to 20 Hz and carry this group's bass below 130 Hz.",
    );
    expect(proposal.subs).toBeNull();
    expect(proposal.lfe.reasons[0]?.sentence).toContain('Without subs the fronts play LFE');
  });
});

describe('the tuner’s own setting', () => {
  it('is shown with its price, and with a ledger of its own', () => {
    const readings = readingsOf('3.1', { FC: small, 'Sub 1': deep });
    const proposal = propose(readings, {}, { crossoverHz: { centre: 60 } });
    const own = groupOf(proposal, 'centre')?.own;
    expect(own).toMatchObject({ crossoverHz: 60, breaks: ['roll-off'] });
    expect(own?.price[0]).toEqual({
      sentence:
        '60 Hz is under the measured rule, 1.25 times the 85 % quantile of the −6 dB point.',
      grounds: [{ channel: 'FC', field: 'rolloff' }],
    });
    const lossOf = (ledger: Proposal['ledger']['own']) =>
      ledger?.lines.find(({ channel }) => channel === 'FC')?.lossDb ?? NaN;
    expect(lossOf(proposal.ledger.own)).toBeGreaterThan(lossOf(proposal.ledger.proposed) + 0.5);
    expect(groupOf(proposal, 'fronts')?.own).toBeNull();
  });

  it('is nothing where it is the proposed one, or no step of the processor', () => {
    const readings = readingsOf('3.1', { FC: small, 'Sub 1': deep });
    for (const centre of [130, 133]) {
      const proposal = propose(readings, {}, { crossoverHz: { centre } });
      expect(groupOf(proposal, 'centre')?.own).toBeNull();
      expect(proposal.ledger.own).toBeNull();
    }
  });
});

describe('the filters of the subs', () => {
  const box = (kind: 'closed' | 'vented', f3Hz: number): Partial<ChannelReading> => ({
    rolloff: { ...rolloffAt(f3Hz, 0.85 * f3Hz), box: { kind, probability: 0.95 } },
  });

  it('leave a closed box without a low cut', () => {
    const { subs } = propose(readingsOf('2.1', { 'Sub 1': box('closed', 28) }));
    expect(subs?.lowCut.hz).toBeNull();
    expect(subs?.lowCut.reasons[0]?.sentence).toContain('the air in a closed box');
  });

  it('guard a vented box where that costs next to nothing', () => {
    // f3 40 Hz, 90 % from 36 Hz: Butterworth 2 at 25 Hz takes 10 log(1 + (25/36)^4) = 0.91 dB there.
    const { subs } = propose(readingsOf('2.1', { 'Sub 1': box('vented', 40) }));
    expect(subs?.lowCut.hz).toBe(25);
    // At 40 Hz: 10 log(1 + (25/40)^4) = 0.617 dB.
    expectClose(subs?.lowCut.costDb, 0.617, 1e-3);
  });

  it('keep the low-pass above every crossover of the bed and LFE', () => {
    // 1.25 · 52.5 Hz → 70 Hz. Linkwitz-Riley 4 at 120 Hz takes 20 log(1 + (70/120)^4) = 0.95 dB
    // there, at 150 Hz 20 log(1 + (70/150)^4) = 0.402 dB.
    const { subs } = propose(readingsOf('2.1', { 'Sub 1': deep }));
    expect(subs?.lowPass.hz).toBe(150);
    expectClose(subs?.lowPass.costDb, 0.402, 1e-3);
  });
});
