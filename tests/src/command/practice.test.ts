import { describe, expect, it } from 'vitest';
import { practiceCommand } from '../../../src/command/practice';
import { practiceTruth } from '../../../src/rig/practice-truth';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { commandLine } from './command-line';

describe('leadline practice', () => {
  it('prints the truth of the room beside every estimate, marked as simulated', async () => {
    const layout = layoutFromName('2.0');
    if (isTrouble(layout)) return expect.fail(layout.sentence);
    const truth = practiceTruth(layout, 4);
    const { code, out } = await practise('--layout', '2.0', '--seed', '4');
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer).toMatchObject({ simulated: true, layout: '2.0', seed: 4 });
    expect(answer.clock.skewPpm.truth).toBe(truth.skewPpm);
    expectClose(answer.clock.skewPpm.estimate, truth.skewPpm, 0.2);
    for (const [index, own] of truth.channels.entries()) {
      const found = answer.channels[index];
      expect(found.channel).toBe(own.channel);
      expect(found.polarity.truth).toBe(own.inverted ? 'inverted' : 'normal');
      expect(found.arrivalSeconds.truth).toBe(own.arrivalSeconds);
      expectClose(found.arrivalSeconds.estimate, own.arrivalSeconds, 0.01 / 343, '10 mm');
      expect(found.rolloff.f10Hz.truth).toBe(own.f10Hz);
      expect(found.rolloff.box.truth).toBe(own.box);
    }
    expect(answer.proposal).toMatchObject({ simulated: true, layout: '2.0' });
  });

  it.each<[string[], RegExp]>([
    [['--layout', '1.5'], /“1\.5” names no layout/],
    [['--layout', '5.1', '--seed', '1.5'], /--seed must be a whole number/],
    [['--layout', '5.1', '--seed', '-1'], /--seed must be a whole number/],
  ])('refuses %j', async (args, finding) => {
    const { code, out, err } = await practise(...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
  });
});

function practise(...args: string[]) {
  return commandLine([practiceCommand], '/', ['practice', ...args]);
}
