import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/take/waiting-card';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';

expectQuiet();

const prompt = {
  title: 'Move 2 plugs before take 2 of 2',
  steps: ['Switch the amplifiers off.', 'Output 5: put in the plug of TpFL.'],
};

function waitingBench(): FakeBench {
  return new FakeBench('5.1', { activity: { kind: 'waiting', prompt } });
}

describe('the card between two takes', () => {
  it('says what to do, step by step', async () => {
    const card = await mount('ll-waiting-card', { bench: waitingBench() }, 360);
    expect(find(card, 'h2').textContent).toBe(prompt.title);
    expect(findAll(card, 'li').map((step) => plain(step.textContent ?? ''))).toEqual(prompt.steps);
    expect(card.scrollWidth).toBeLessThanOrEqual(360);
  });

  it('goes on with Enter: its button has the focus as soon as it appears', async () => {
    const bench = waitingBench();
    await mount('ll-waiting-card', { bench });
    await userEvent.keyboard('{Enter}');
    expect(bench.calls).toEqual(['proceed']);
  });

  it('goes on with Enter also when nothing has the focus, once', async () => {
    const bench = waitingBench();
    await mount('ll-waiting-card', { bench });
    (document.activeElement as HTMLElement | null)?.blur();
    await userEvent.keyboard('{Enter}');
    expect(bench.calls).toEqual(['proceed']);
  });

  it('leaves Enter to a field that is being typed in', async () => {
    const bench = waitingBench();
    const field = document.body.appendChild(document.createElement('input'));
    field.focus();
    await mount('ll-waiting-card', { bench });
    expect(document.activeElement).toBe(field);
    await userEvent.keyboard('{Enter}');
    expect(bench.calls).toEqual([]);
  });

  it('stops on demand', async () => {
    const bench = waitingBench();
    const card = await mount('ll-waiting-card', { bench });
    await userEvent.click(find(card, '.ghost'));
    expect(bench.calls).toEqual(['stop']);
  });

  it('is gone, and deaf to Enter, when nothing waits', async () => {
    const bench = waitingBench();
    const card = await mount('ll-waiting-card', { bench });
    bench.set({ activity: { kind: 'idle' } });
    await settle(card);
    expect(textOf(card)).toBe('');
    await userEvent.keyboard('{Enter}');
    expect(bench.calls).toEqual([]);
  });
});
