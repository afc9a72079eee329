import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import type { GroupProposal, ProcessorSteps } from '../../../src/proposal/proposal';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { Readings } from '../../../src/reading/reading';
import type { GroupId } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';

function groupOf(
  readings: Readings,
  group: GroupId,
  processor: ProcessorSteps = defaultProcessorSteps,
): GroupProposal {
  const proposal = proposeSettings(readings, layoutNamed(readings.layout), processor);
  if (isTrouble(proposal)) throw new Error(proposal.sentence);
  const found = proposal.groups.find((each) => each.group === group);
  if (!found) throw new Error(`no ${group}`);
  return found;
}

describe('the crossover of a group', () => {
  // f6 of 60 Hz: 1.25 × 63 = 78.75 → 80 Hz; f3 of 75 Hz + 10 = 85 → 90 Hz.
  const uneven = readingsOf('5.1', {
    SiL: { rolloff: rolloffAt(75, 60) },
    SiR: { rolloff: rolloffAt(70, 50) },
  });

  it('is the first step at or above 1.25 times the worst f6, and names who decided', () => {
    const sides = groupOf(uneven, 'sides');
    expect(sides.crossoverHz).toBe(80);
    expect(sides.measuredHz).toBe(80);
    expect(sides.decidedBy).toBe('SiL');
    expect(sides.channels).toEqual(['SiL', 'SiR']);
    expect(sides.reason).toContain('Side left is 6 dB down at 60 Hz, the highest of the group');
    expect(sides.reason).toContain('90 % between 54 Hz and 66 Hz');
  });

  it('says which frequency each number is of', () => {
    const { reason } = groupOf(uneven, 'sides');
    expect(reason).toContain(
      'takes 1.25 times the 85 % quantile of that −6 dB point, 63 Hz: it calls for 79 Hz or more. The first step there is 80 Hz.',
    );
    expect(reason).not.toContain('roll-off');
  });

  it('stands beside what practice would say, the −3 dB point plus 10 Hz', () => {
    const sides = groupOf(uneven, 'sides');
    expect(sides.practiceHz).toBe(90);
    expect(sides.reason).toContain('the highest −3 dB point (75 Hz) plus 10 Hz, would say 90 Hz');
  });

  it('follows practice to the step exactly at f3 + 10 Hz, and one further just above it', () => {
    const practice = (f3: number): number | null =>
      groupOf(readingsOf('3.1', { FC: { rolloff: rolloffAt(f3, 40) } }), 'centre').practiceHz;
    expect([practice(70), practice(70.01)]).toEqual([80, 90]);
  });

  it('follows the measured rule to the step exactly at 1.25 f6', () => {
    const measured = (f6UpperHz: number): number | null => {
      const rolloff = { ...rolloffAt(60, 50), f6UpperHz };
      return groupOf(readingsOf('3.1', { FC: { rolloff } }), 'centre').measuredHz;
    };
    expect([measured(80), measured(80.1)]).toEqual([100, 110]);
  });

  it('offers every step with its margin over the deciding f3', () => {
    const { alternatives } = groupOf(uneven, 'sides');
    expect(alternatives.map((a) => a.stepHz)).toEqual(defaultProcessorSteps.crossoverHz);
    expect(alternatives.map((a) => a.marginHz)).toEqual(
      defaultProcessorSteps.crossoverHz.map((hz) => hz - 75),
    );
    expect(alternatives.filter((a) => a.measured).map((a) => a.stepHz)).toEqual([80]);
    expect(alternatives.filter((a) => a.practice).map((a) => a.stepHz)).toEqual([90]);
  });

  it('is null with the reason when no step reaches far enough', () => {
    const readings = readingsOf('5.1', { SiL: { rolloff: rolloffAt(120, 100) } });
    const sides = groupOf(readings, 'sides', { ...defaultProcessorSteps, crossoverHz: [60, 80] });
    expect(sides.crossoverHz).toBeNull();
    expect(sides.practiceHz).toBeNull();
    expect(sides.decidedBy).toBe('SiL');
    expect(sides.reason).toContain("131 Hz or more, and the processor's highest step is 80 Hz");
    expect(sides.alternatives).toHaveLength(2);
  });

  it('warns above 120 Hz in the bed, not in the heights', () => {
    const small = { rolloff: rolloffAt(130, 110) };
    const readings = readingsOf('5.1.2', { SiL: small, TpFL: small });
    expect(groupOf(readings, 'sides').crossoverHz).toBe(150);
    expect(groupOf(readings, 'sides').warnings.join()).toContain('Above 120 Hz');
    expect(groupOf(readings, 'front heights').crossoverHz).toBe(150);
    expect(groupOf(readings, 'front heights').warnings).toEqual([]);
  });

  it('rests on the speaker that was read, and says what is missing of the other', () => {
    const notes = ['Polarity cannot be told.', 'No roll-off: its bass lies under the noise.'];
    const readings = readingsOf('5.1', {
      SiL: { rolloff: rolloffAt(75, 60) },
      SiR: { rolloff: null, notes },
    });
    const sides = groupOf(readings, 'sides');
    expect(sides.crossoverHz).toBe(80);
    expect(sides.reason).not.toContain('highest of the group');
    expect(sides.warnings).toEqual([
      'No roll-off could be read for side right. No roll-off: its bass lies under the noise.',
    ]);
  });

  it('falls back to 80 Hz only when nothing is known of the whole group, and says so', () => {
    const readings = readingsOf('5.1', { SiL: { rolloff: null }, SiR: { rolloff: null } });
    const sides = groupOf(readings, 'sides');
    expect(sides).toMatchObject({ crossoverHz: 80, practiceHz: 80, measuredHz: null });
    expect(sides.decidedBy).toBeNull();
    expect(sides.reason).toContain('Nothing is known of the roll-off of side left and side right');
    expect(sides.reason).toContain('not a finding');
    expect(sides.warnings).toHaveLength(2);
    const low = { ...defaultProcessorSteps, crossoverHz: [40, 60] };
    expect(groupOf(readings, 'sides', low).crossoverHz).toBeNull();
  });

  it('does not exist without subs: the group runs full range', () => {
    const fronts = groupOf(readingsOf('2.0', { FR: { rolloff: rolloffAt(50, 44) } }), 'fronts');
    expect(fronts).toMatchObject({ crossoverHz: null, practiceHz: null, measuredHz: null });
    expect(fronts.reason).toContain('no sub to hand bass to');
    expect(fronts.reason).toContain('Front left is 6 dB down at 50 Hz');
  });

  it('passes on the faults of the sweeps it rests on', () => {
    const faults = [{ kind: 'clipped', sentence: 'The sweep clipped.' }] as const;
    const readings = readingsOf('3.1', { FC: { faults } });
    expect(groupOf(readings, 'centre').warnings).toEqual(['The sweep clipped.']);
  });

  it('is missing for a speaker the take holds nothing of, which is said', () => {
    const whole = readingsOf('5.1');
    const readings = { ...whole, channels: whole.channels.filter((c) => c.channel !== 'SiR') };
    expect(groupOf(readings, 'sides').warnings).toEqual([
      'The take holds nothing of side right, so there is no roll-off.',
    ]);
  });
});
