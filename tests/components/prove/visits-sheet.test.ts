import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/prove/prove-stage';
import type { SessionDocument } from '../../../src/session/document';
import { summariseSession } from '../../../src/session/shelf/summarise-session';
import type { StoredSession } from '../../../src/session/shelf/stored-session';
import { farther, louder, microphoneAt, then, visit } from '../../src/visits/told-visits';
import { FakeBench } from '../fake-bench';
import { find, findAll, mount, notNumbers, overlappingTexts, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();
beforeEach(() => {
  location.hash = '#prove/visits';
});

const stored: StoredSession = {
  id: then.id,
  name: then.name,
  order: 1,
  deleted: false,
  problem: null,
  summary: summariseSession(then, '2025-01-01T00:02:00.000Z'),
};

function benchAt(document: SessionDocument, earlier: SessionDocument | null = then): FakeBench {
  const here = { ...stored, id: document.id, name: document.name };
  const sessions = { stored: [here, stored], file: null, earlier };
  return new FakeBench('5.2.4', { document, sessions });
}

const drifted = visit('now', { SiL: farther(0.3), FC: louder(-2) });

function shown(stage: Element): string[] {
  return findAll(stage, '[data-finding]').flatMap((one) =>
    one.className === 'fail' ? (one.getAttribute('data-finding') ?? []) : [],
  );
}

describe('the sheet of an earlier visit', () => {
  it('asks for one, of those in this browser that are not on the bench', async () => {
    const bench = benchAt(drifted, null);
    const stage = await mount('ll-prove', { bench });
    expect(textOf(find(stage, 'h1'))).toContain('No earlier visit is chosen');
    const options = findAll(find(stage, 'll-visit-picker'), 'option').map(textOf);
    expect(options).toHaveLength(2);
    expect(options[1]).toContain('Visit then, 5.2.4, 1 January 2025');
    await userEvent.selectOptions(
      find<HTMLElement>(find(stage, 'll-visit-picker'), 'select'),
      'then',
    );
    expect(bench.calls).toEqual(['compareWith then']);
  });

  it('reads the list when nobody has yet, and takes a file', async () => {
    const sessions = { stored: null, file: null, earlier: null };
    const bench = new FakeBench('5.2.4', { sessions });
    const stage = await mount('ll-prove', { bench });
    expect(bench.calls).toEqual(['look']);
    const file = new File(['x'], 'spring.zip');
    find(stage, 'll-file-drop').dispatchEvent(new CustomEvent('ll-file', { detail: file }));
    expect(bench.calls.at(-1)).toBe('compareWithFile spring.zip');
  });

  it('shows what changed first, with how much, and folds what did not', async () => {
    const bench = benchAt(drifted);
    const stage = await mount('ll-prove', { bench }, 1060);
    expect(textOf(find(stage, 'h1'))).toBe('2 things have changed since “Visit then”');
    expect(shown(stage)).toEqual(['distance · SiL · Seat 1', 'level · FC · Seat 1']);
    const first = textOf(find(stage, '[data-finding="distance · SiL · Seat 1"]'));
    expect(first).toContain('Side left is 30 cm farther');
    expect(first).toContain('+0.30 m (0.29–0.31)');
    const folded = findAll<HTMLDetailsElement>(find(stage, 'll-visit-findings'), 'details');
    expect(folded.map(({ open }) => open)).toEqual([false, false]);
    expect(textOf(find(stage, '[data-finding="level · all · Seat 1"]'))).toContain(
      'Calibrate the sound level at every visit.',
    );
  });

  it('draws the first speaker that changed, then and now, and asks for another', async () => {
    const bench = benchAt(drifted);
    const stage = await mount('ll-prove', { bench }, 1060);
    const curves = find(stage, 'll-visit-curves');
    expect(textOf(find(curves, 'h2'))).toBe('SiL at Seat 1, then and now');
    expect(findAll(curves, 'path.trace, .lines path').length).toBeGreaterThan(1);
    const picked: unknown[] = [];
    stage.addEventListener('ll-select', ({ detail }) => picked.push(detail));
    await userEvent.selectOptions(find<HTMLElement>(curves, 'select'), 'FC');
    const button = find(stage, '[data-finding="distance · SiL · Seat 1"] button');
    button.focus();
    await userEvent.keyboard('{Enter}');
    expect(picked).toEqual(['FC', 'SiL']);
  });

  it('keeps the focus on the list while the choice arrives', async () => {
    const bench = benchAt(drifted, null);
    const stage = await mount('ll-prove', { bench });
    const picker = find(stage, 'll-visit-picker');
    const select = find(picker, 'select');
    select.focus();
    bench.set({ sessions: { ...bench.state.sessions, earlier: then } });
    await settle(stage);
    expect(picker.shadowRoot?.activeElement).toBe(select);
    await userEvent.click(find(picker, 'button.ghost'));
    expect(bench.calls.at(-1)).toBe('compareWith null');
  });

  it('says so when nothing changed', async () => {
    const stage = await mount('ll-prove', { bench: benchAt(visit('now')) });
    expect(textOf(find(stage, 'h1'))).toContain('Nothing is seen to have changed');
  });

  for (const width of [358, 700, 1060]) {
    it(`stays inside ${width} px, with nothing on top of another`, async () => {
      const told = { ...microphoneAt(0.1, 0.3), FC: louder(-6) };
      const stage = await mount('ll-prove', { bench: benchAt(visit('now', told)) }, width);
      for (const one of findAll<HTMLDetailsElement>(find(stage, 'll-visit-findings'), 'details')) {
        one.open = true;
      }
      await settle(stage);
      expect(overlappingTexts(stage)).toEqual([]);
      expect(notNumbers(stage)).toEqual([]);
      expect(stage.scrollWidth).toBeLessThanOrEqual(width);
    });
  }
});
