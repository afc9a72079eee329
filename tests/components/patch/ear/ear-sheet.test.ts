import { describe, expect, it } from 'vitest';
import { find, findAll, mount, notNumbers, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { inventedNoise } from '../../probe/noise/invented-noise';
import { sampleSheet } from '../samples';
import { earSheet } from './ear-fixture';
import { NoisyBench } from './noisy-bench';

expectQuiet();

describe('where and when there is no ear check', () => {
  it('says why not with a recording', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    bench.setRig('recording');
    await settle(sheet);
    expect(textOf(sheet)).toContain('this computer plays nothing');
    await keys(' ', 'h');
    expect(bench.played).toEqual([]);
  });

  it('says that the practice room makes no sound', async () => {
    const { sheet } = await earSheet('3.1', false);
    expect(textOf(sheet)).toContain('The practice room makes no sound');
  });

  it('waits while something else sounds, and says so', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    bench.set({ activity: { kind: 'noise', noise: inventedNoise() } });
    await settle(sheet);
    await keys(' ', 'h');
    expect(bench.played).toEqual([]);
    expect(textOf(sheet)).toContain('Go to Noise');
  });

  it('shows the plugs to move first, and takes no answer meanwhile', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ');
    bench.set({ activity: { kind: 'waiting', prompt: { title: 'Move a plug', steps: ['One.'] } } });
    await settle(sheet);
    await keys('h');
    expect(textOf(sheet)).toContain('Move a plug');
    expect(bench.state.document.earAnswers).toEqual({});
  });

  it('takes no answer before the channel really sounds', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ');
    bench.lags = true;
    await keys('h', 'h', 's');
    expect(bench.played).toEqual(['start FL', 'change FR']);
    expect(bench.state.document.earAnswers).toEqual({ FL: { kind: 'here' } });
    expect(textOf(sheet)).toContain('It begins.');
    bench.catchUp();
    await settle(sheet);
    await keys('s');
    expect(bench.state.document.earAnswers.FR).toEqual({ kind: 'silent' });
  });

  it('falls silent when it is left', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ');
    sheet.remove();
    expect(bench.state.activity.kind).toBe('idle');
  });

  it('holds nineteen speakers at every width', async () => {
    const bench = new NoisyBench('9.4.6', await sampleSheet(16));
    for (const width of [366, 720, 1080]) {
      const sheet = await mount('ll-ear-sheet', { bench }, width);
      expect(findAll(find(sheet, 'll-ear-list'), 'li')).toHaveLength(19);
      expect(notNumbers(sheet)).toEqual([]);
      expect(sheet.scrollWidth).toBeLessThanOrEqual(width);
    }
  });
});
