import { describe, expect, it } from 'vitest';
import { groupFinding, groupName } from '../../../components/propose/group-words';
import type { GroupProposal } from '../../../src/proposal/proposal';
import { layoutOf } from '../fake-bench';
import { plain } from '../mount';

const sides: GroupProposal = {
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
const finding = (changes: Partial<GroupProposal>, inForce: number | null = 80, name = '5.1') =>
  plain(groupFinding({ ...sides, ...changes }, inForce, layoutOf(name)));

describe('the finding of a group', () => {
  it('says where the group crosses over', () => {
    expect(finding({})).toBe('Surrounds cross over at 80 Hz');
    expect(finding({}, 80, '7.1')).toBe('Side surrounds cross over at 80 Hz');
    expect(finding({ group: 'centre' })).toBe('The centre crosses over at 80 Hz');
  });

  it('says what was set instead of what is proposed', () => {
    expect(finding({}, 100)).toBe('Surrounds are set to 100 Hz; 80 Hz is proposed');
    expect(finding({ group: 'centre', crossoverHz: null }, 100)).toBe(
      'The centre is set to 100 Hz; none is proposed',
    );
    expect(finding({}, null)).toBe('Surrounds are set full range; 80 Hz is proposed');
  });

  it('does not pretend to know', () => {
    expect(finding({ crossoverHz: null }, null)).toBe(
      'No step of the processor suits the surrounds',
    );
    expect(finding({ decidedBy: null })).toBe(
      'Where the surrounds roll off cannot be told; 80 Hz is only practice',
    );
  });

  it('names the nearest step where none will do', () => {
    const none = { crossoverHz: null, nearestHz: 200 };
    expect(finding(none, 200)).toBe('No step of the processor suits the surrounds');
    expect(finding(none, 100)).toBe('Surrounds are set to 100 Hz; 200 Hz is proposed');
  });

  it('runs full range where there is no sub', () => {
    expect(finding({ group: 'fronts', crossoverHz: null }, null, '2.0')).toBe(
      'Fronts run full range: there is no sub',
    );
  });

  it('names surrounds by their side only where there are others', () => {
    expect(groupName('sides', layoutOf('5.1'))).toBe('Surrounds');
    expect(groupName('sides', layoutOf('7.1'))).toBe('Side surrounds');
  });
});
