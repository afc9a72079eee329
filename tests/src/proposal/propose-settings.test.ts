import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { Readings } from '../../../src/reading/reading';
import { isTrouble } from '../../../src/trouble';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';

const readings = readingsOf('7.2.4', {
  FR: { distanceMetres: 2.71, levelDb: -31.4, rolloff: rolloffAt(48, 41) },
  BL: { rolloff: rolloffAt(70, 61) },
  BR: { rolloff: rolloffAt(70, 61) },
  SiR: { rolloff: null },
  'Sub 2': { levelDb: -24 },
});
const layout = layoutNamed('7.2.4');

function troubleOf(changed: Readings, layoutName = changed.layout): string {
  const answer = proposeSettings(changed, layoutNamed(layoutName), defaultProcessorSteps);
  return isTrouble(answer) ? `${answer.trouble}: ${answer.sentence}` : 'none';
}

describe('proposeSettings', () => {
  const proposal = proposeSettings(readings, layout, defaultProcessorSteps);

  it('has one proposal for every group of speakers but the subs, and one for every channel', () => {
    if (isTrouble(proposal)) throw new Error(proposal.sentence);
    expect(proposal.groups.map((group) => group.group)).toEqual([
      'fronts',
      'centre',
      'sides',
      'backs',
      'front heights',
      'back heights',
    ]);
    expect(proposal.channels.map((c) => c.channel)).toEqual(layout.channels.map((c) => c.label));
    expect(proposal).toMatchObject({ layout: '7.2.4', simulated: true });
  });

  it('is the same whatever the order of channels in readings and layout', () => {
    const turned = { ...readings, channels: [...readings.channels].reverse() };
    const mirrored = { ...layout, channels: [...layout.channels].reverse() };
    expect(proposeSettings(turned, mirrored, defaultProcessorSteps)).toEqual(proposal);
  });

  it('gives a reason for every number and for every number that is missing', () => {
    if (isTrouble(proposal)) throw new Error(proposal.sentence);
    for (const { distanceReason, levelReason } of proposal.channels) {
      expect(distanceReason).toMatch(/^[A-Z].*\.$/);
      expect(levelReason).toMatch(/^[A-Z].*\.$/);
    }
    for (const { reason } of proposal.groups) expect(reason).toMatch(/^[A-Z].*\.$/);
    expect(JSON.stringify(proposal)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('refuses readings of another layout, and readings with what is no number', () => {
    expect(troubleOf(readings, '5.1')).toMatch(/^other-take: .*7\.2\.4.*5\.1/);
    const broken = readingsOf('2.0', { FR: { levelDb: NaN } });
    expect(troubleOf(broken)).toMatch(/^not-a-number: .*channels\.1\.levelDb/);
    expect(troubleOf({ ...readings, temperatureCelsius: -400 })).toMatch(/^bad-number: /);
  });

  it('refuses a processor whose steps cannot be used', () => {
    const wrong = { ...defaultProcessorSteps, crossoverHz: [80, 60] };
    expect(proposeSettings(readings, layout, wrong)).toMatchObject({ trouble: 'bad-steps' });
  });
});
