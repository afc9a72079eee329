import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/shell/app';
import type { App } from '../../../components/shell/app';
import '../../../components/theme/base.css';
import type { StoredSession } from '../../../src/session/shelf/stored-session';
import { summariseSession } from '../../../src/session/shelf/summarise-session';
import { FakeBench } from '../fake-bench';
import { find, findAll, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { sampleDocument, sampleTake } from '../sample-session';

expectQuiet();

let app: App;

const attic: StoredSession = {
  id: 'attic',
  name: 'Attic',
  order: 2,
  deleted: false,
  problem: null,
  summary: summariseSession(
    { ...sampleDocument('7.1.4'), name: 'Attic', takes: [sampleTake('7.1.4')] },
    '2030-01-02T03:04:05.000Z',
  ),
};
const cellar: StoredSession = { ...attic, id: 'cellar', name: 'Cellar', order: 1, deleted: true };
const broken: StoredSession = {
  ...attic,
  id: 'broken',
  name: 'Broken',
  summary: null,
  problem: 'It is damaged: takes is missing.',
};

async function show(bench: FakeBench): Promise<FakeBench> {
  location.hash = 'prove';
  app = document.createElement('ll-app');
  app.bench = bench;
  document.body.append(app);
  await settle(app);
  return bench;
}

/** The app with the panel open, and a list. */
async function opened(stored: readonly StoredSession[] | null): Promise<FakeBench> {
  const bench = new FakeBench('5.1', { sessions: { stored, file: null, earlier: null } });
  await show(bench);
  await userEvent.click(find(app, '.sessions'));
  await settle(app);
  bench.calls.length = 0;
  return bench;
}

const dialog = (): HTMLDialogElement => find<HTMLDialogElement>(app, 'dialog');

function press(id: string, wish: string): Promise<void> {
  return userEvent.click(find(find(app, `[data-session="${id}"]`), `[data-wish="${wish}"]`));
}

beforeEach(() => {
  localStorage.clear();
  sessionStorage.clear();
});
afterEach(() => {
  document.body.replaceChildren();
  location.hash = '';
});

describe('the panel of sessions', () => {
  it('opens beside the session’s name and reads the list', async () => {
    const bench = await show(new FakeBench());
    expect(dialog().open).toBe(false);
    await userEvent.click(find(app, '.sessions'));
    await settle(app);
    expect(dialog().open).toBe(true);
    expect(bench.calls).toEqual(['look']);
  });

  it('opens by keyboard, closes with Esc, which silences everything, and gives the focus back', async () => {
    const bench = await show(new FakeBench());
    const button = find(app, '.sessions');
    button.focus();
    await userEvent.keyboard('{Enter}');
    await settle(app);
    expect(dialog().open).toBe(true);
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => dialog().open).toBe(false);
    expect(bench.calls).toEqual(['look', 'stop']);
    expect(app.shadowRoot?.activeElement).toBe(button);
  });

  it('says what each session is, the one on the bench first', async () => {
    await opened([attic]);
    const rows = findAll(app, 'll-session-row').map(textOf);
    expect(rows).toHaveLength(2);
    expect(rows[0]).toContain('5.1 · new · no takes');
    expect(rows[0]).toContain('On the bench');
    expect(rows[1]).toMatch(/7\.1\.4 · probed · 1 take, about \d+ MB/);
    expect(rows[1]).toContain('2 January 2030');
  });

  it('asks the bench for what is wished of a session', async () => {
    const bench = await opened([attic]);
    await press('attic', 'duplicate');
    await press('attic', 'delete');
    expect(bench.calls).toEqual(['duplicate attic', 'delete attic']);
    expect(dialog().open).toBe(true);
    await press('attic', 'open');
    expect(bench.calls.at(-1)).toBe('open attic');
    await expect.poll(() => dialog().open).toBe(false);
  });

  it('compares the session on the bench with another, in Prove', async () => {
    const bench = await opened([attic]);
    expect(findAll(dialog(), '[data-wish="compare"]')).toHaveLength(1);
    await press('attic', 'compare');
    expect(bench.calls).toEqual(['compareWith attic']);
    await expect.poll(() => dialog().open).toBe(false);
    expect(location.hash).toBe('#prove/visits');
  });

  it('stays open with the trouble when a session cannot be opened', async () => {
    const bench = await opened([attic]);
    bench.set({ trouble: { trouble: 'storage', sentence: 'It is gone.' } });
    await press('attic', 'open');
    await settle(app);
    expect(dialog().open).toBe(true);
    expect(textOf(dialog())).toContain('It is gone.');
  });

  it('renames in place', async () => {
    const bench = await opened([attic]);
    const field = find(find(app, '[data-session="attic"]'), 'input');
    await userEvent.fill(field, 'Loft');
    await userEvent.keyboard('{Tab}');
    expect(bench.calls).toEqual(['rename attic to Loft']);
  });

  it('keeps the deleted apart, to be brought back or removed', async () => {
    const bench = await opened([attic, cellar]);
    expect(textOf(dialog())).toContain('Deleted, kept until this page is closed');
    await press('cellar', 'restore');
    await press('cellar', 'remove');
    expect(bench.calls).toEqual(['restore cellar', 'remove cellar']);
  });

  it('puts nothing that removes for good under a hand that presses “Delete” twice', async () => {
    await opened([attic, cellar]);
    const boxOf = (id: string, wish: string) =>
      find(find(app, `[data-session="${id}"]`), `[data-wish="${wish}"]`).getBoundingClientRect();
    expect(boxOf('cellar', 'remove').right).toBeLessThanOrEqual(boxOf('attic', 'delete').left);
  });

  it('gives the focus of a deleted session to what brings it back', async () => {
    await opened([cellar]);
    const row = find(app, '[data-session="cellar"]');
    row.focus();
    expect(row.shadowRoot?.activeElement?.getAttribute('data-wish')).toBe('restore');
  });

  it('says why one cannot be opened, and does not offer to', async () => {
    await opened([broken]);
    const row = find(app, '[data-session="broken"]');
    expect(textOf(row)).toContain('Cannot be opened. It is damaged: takes is missing.');
    expect(findAll(row, '[data-wish="open"]')).toEqual([]);
  });

  it('begins a new session, saves a file and opens one', async () => {
    const bench = await opened([attic]);
    await userEvent.click(find(dialog(), '.save'));
    const drop = find(dialog(), 'll-file-drop');
    const file = new File(['x'], 'theirs.zip');
    drop.dispatchEvent(new CustomEvent('ll-file', { detail: file }));
    await expect.poll(() => bench.calls).toEqual(['saveFile', 'openFile theirs.zip']);
    await userEvent.click(find(app, '.sessions'));
    await settle(app);
    await userEvent.click(find(dialog(), '.new'));
    expect(bench.calls.at(-1)).toBe('create');
  });

  it('offers nothing while something runs, and shows how far a file is', async () => {
    const bench = await opened([attic]);
    bench.set({
      sessions: { stored: [attic], file: { what: 'Opening', progress: 0.4 }, earlier: null },
    });
    await settle(app);
    const bar = find(dialog(), '[role="progressbar"]');
    expect(bar.getAttribute('aria-valuenow')).toBe('40');
    const buttons = findAll<HTMLButtonElement>(dialog(), '.actions button, [data-wish]');
    expect(buttons.length).toBeGreaterThan(3);
    expect(buttons.every(({ disabled }) => disabled)).toBe(true);
  });

  it('fits a narrow window, in every name', async () => {
    const long = 'A very long name of a session '.repeat(3).slice(0, 80);
    await opened([
      attic,
      { ...attic, id: 'long', name: long },
      { ...cellar, name: 'x'.repeat(80) },
    ]);
    dialog().style.width = '366px';
    await settle(app);
    const right = dialog().getBoundingClientRect().right;
    const inside = findAll(dialog(), 'button, input:not([hidden]), p, .name');
    for (const one of inside) expect(one.getBoundingClientRect().right).toBeLessThan(right);
    expect(dialog().scrollWidth).toBeLessThanOrEqual(dialog().clientWidth);
  });
});
