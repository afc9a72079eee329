import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/shell/app';
import '../../../components/shell/new-version';
import type { NewVersion } from '../../../components/shell/new-version';
import '../../../components/theme/base.css';
import type { Activity, BenchState } from '../../../src/session/bench';
import { FakeBench } from '../fake-bench';
import { find, findAll, mount, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { FakeUpdates } from './fake-updates';

expectQuiet();

interface Shown {
  readonly element: NewVersion;
  readonly bench: FakeBench;
  readonly updates: FakeUpdates;
}

async function show(state: Partial<BenchState>, ready = true): Promise<Shown> {
  const bench = new FakeBench('5.1', state);
  const updates = new FakeUpdates({ kept: true, ready });
  const element = await mount('ll-new-version', { bench, updates });
  return { element, bench, updates };
}

const reading: Activity = { kind: 'reading', progress: 0.5, secondsLeft: 3, channels: [] };

describe('a new version of the app', () => {
  it('is not spoken of while there is none, and takes no room', async () => {
    const { element, updates } = await show({}, false);
    expect(textOf(element)).toBe('');
    expect(element.hasAttribute('quiet')).toBe(true);
    updates.set({ ready: true });
    await settle(element);
    expect(textOf(element)).toContain('A new version is ready.');
    expect(element.hasAttribute('quiet')).toBe(false);
  });

  it('waits until nothing runs any more', async () => {
    const { element, bench } = await show({ activity: reading });
    expect(textOf(element)).toBe('');
    bench.set({ activity: { kind: 'idle' } });
    await settle(element);
    expect(textOf(element)).toContain('A new version is ready.');
    bench.set({ activity: reading });
    await settle(element);
    expect(textOf(element)).toBe('');
  });

  it('waits until the session is stored', async () => {
    const { element, bench } = await show({ saved: 'saving' });
    expect(textOf(element)).toBe('');
    bench.set({ saved: 'saved' });
    await settle(element);
    expect(textOf(element)).toContain('A new version is ready.');
  });

  it('waits until a session file is written', async () => {
    const sessions = {
      stored: null,
      file: { what: 'Saving', progress: 0.5 },
      earlier: null,
    } as const;
    const { element } = await show({ sessions });
    expect(textOf(element)).toBe('');
  });

  it('is loaded only by its button', async () => {
    const { element, updates } = await show({});
    expect(updates.wished).toBe(0);
    await userEvent.click(find(element, 'button'));
    expect(updates.wished).toBe(1);
  });

  it('is not loaded over a session that could not be stored, and says what to do', async () => {
    const { element } = await show({ saved: 'failed' });
    expect(find<HTMLButtonElement>(element, 'button').disabled).toBe(true);
    expect(textOf(element)).toContain('save it as a file first');
  });

  it('lets go of what it listened to', async () => {
    const { element, bench, updates } = await show({});
    expect([bench.listening, updates.listening]).toEqual([1, 1]);
    element.remove();
    expect([bench.listening, updates.listening]).toEqual([0, 0]);
  });
});

describe('the shell', () => {
  it('says in its panel of sessions which version runs and whether it is kept', async () => {
    const updates = new FakeUpdates({ kept: false, ready: false });
    const app = await mount('ll-app', { bench: new FakeBench(), updates }, 1200);
    await userEvent.click(find(app, '.sessions'));
    await settle(app);
    const line = find(app, 'll-version');
    expect(textOf(line)).toContain('A version in development');
    expect(textOf(line)).toContain('Not kept in this browser');
    updates.set({ kept: true });
    await settle(app);
    expect(textOf(line)).toContain('opens without the network');
  });

  it('shows a new version on every stage, and nothing of it where nothing is kept', async () => {
    const updates = new FakeUpdates({ kept: true, ready: true });
    const app = await mount('ll-app', { bench: new FakeBench(), updates }, 1200);
    expect(textOf(find(app, 'main'))).toContain('A new version is ready.');
    app.updates = null;
    await settle(app);
    expect(findAll(app, 'll-new-version')).toEqual([]);
  });
});
