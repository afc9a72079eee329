import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/shell/other-tab';
import '../../../components/shell/app';
import '../../../components/plan/plan-stage';
import '../../../components/theme/base.css';
import { trouble } from '../../../src/trouble';
import { findDeep } from '../deep';
import { FakeBench } from '../fake-bench';
import { find, mount, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

describe('another tab', () => {
  it('is not spoken of while this one writes, and takes no room', async () => {
    const bench = new FakeBench('5.1');
    const element = await mount('ll-other-tab', { bench });
    expect(textOf(element)).toBe('');
    expect(element.hasAttribute('quiet')).toBe(true);
  });

  it('is said to save while it does, and to be closed once it is', async () => {
    const bench = new FakeBench('5.1', { saved: 'elsewhere' });
    const element = await mount('ll-other-tab', { bench });
    expect(textOf(element)).toContain('open in another tab');
    expect(textOf(element)).toContain('Close the other tab to go on here.');
    bench.set({ saved: 'saved' });
    await settle(element);
    expect(textOf(element)).toContain('You can go on here');
    await userEvent.click(find(element, 'button'));
    await settle(element);
    expect(textOf(element)).toBe('');
    expect(element.hasAttribute('quiet')).toBe(true);
  });
});

describe('a change that a following tab refuses', () => {
  it('is put back on screen as it is', async () => {
    const bench = new FakeBench('5.1', { saved: 'elsewhere' });
    const { name } = bench.state.document;
    bench.change = () => bench.set({ trouble: trouble('storage', 'Nothing was changed.') });
    const app = await mount('ll-app', { bench });
    for (const typed of ['Garden room', 'Loft']) {
      await userEvent.fill(findDeep(app, 'll-session-name input'), typed);
      await userEvent.keyboard('{Tab}');
      await settle(app);
      expect(findDeep(app, 'll-session-name input')).toHaveProperty('value', name);
    }
  });
});
