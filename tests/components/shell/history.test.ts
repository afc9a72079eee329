import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/plan/plan-stage';
import '../../../components/shell/app';
import type { App } from '../../../components/shell/app';
import '../../../components/theme/base.css';
import { FakeBench } from '../fake-bench';
import { find, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

let app: App;

async function show(bench: FakeBench): Promise<FakeBench> {
  location.hash = 'plan';
  app = document.createElement('ll-app');
  app.bench = bench;
  document.body.append(app);
  await settle(app);
  return bench;
}

const both = { undo: 'Choose practice room', redo: 'Move FL' };
const button = (way: string): HTMLButtonElement =>
  find<HTMLButtonElement>(find(app, 'll-history-buttons'), `.${way}`);

beforeEach(() => {
  localStorage.clear();
  sessionStorage.clear();
});
afterEach(() => {
  document.body.replaceChildren();
  location.hash = '';
});

describe('undo and redo in the header', () => {
  it('name the change they would take back or bring back', async () => {
    await show(new FakeBench('5.1', { history: both }));
    expect(button('undo').getAttribute('aria-label')).toBe('Undo: Choose practice room');
    expect(button('redo').getAttribute('aria-label')).toBe('Redo: Move FL');
    expect(button('undo').title).toContain('Undo: Choose practice room');
  });

  it('do so when pressed, and say it', async () => {
    const bench = await show(new FakeBench('5.1', { history: both }));
    await userEvent.click(button('undo'));
    await userEvent.click(button('redo'));
    expect(bench.calls).toEqual(['undo', 'redo']);
    await settle(app);
    expect(textOf(find(app, 'll-history-buttons'))).toContain('Done again: Move FL');
  });

  it('cannot be pressed when there is nothing to do, nor while something runs', async () => {
    const bench = await show(new FakeBench());
    expect(button('undo').disabled).toBe(true);
    expect(button('redo').disabled).toBe(true);
    const activity = { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } as const;
    bench.set({ history: both, activity });
    await settle(app);
    expect(button('undo').disabled).toBe(true);
    bench.set({ activity: { kind: 'idle' } });
    await settle(app);
    expect(button('undo').disabled).toBe(false);
  });

  it('answer to the keys', async () => {
    const bench = await show(new FakeBench('5.1', { history: both }));
    await userEvent.keyboard('{Control>}z{/Control}');
    await userEvent.keyboard('{Control>}{Shift>}Z{/Shift}{/Control}');
    await userEvent.keyboard('{Meta>}z{/Meta}');
    await userEvent.keyboard('{Control>}y{/Control}');
    expect(bench.calls).toEqual(['undo', 'redo', 'undo', 'redo']);
  });

  it('leave the keys to a text field that is being written in', async () => {
    const bench = await show(new FakeBench('5.1', { history: both }));
    const field = find<HTMLInputElement>(find(app, 'header ll-session-name'), 'input');
    await userEvent.click(field);
    await userEvent.keyboard('{Control>}z{/Control}');
    expect(bench.calls).toEqual([]);
  });
});
