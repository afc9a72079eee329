import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/patch/patch-stage';
import { patchStanding } from '../../../components/patch/patch-standing';
import { patchTitle } from '../../../components/patch/patch-title';
import type { EarAnswers } from '../../../src/wirecheck/ear-check';
import type { WalkStop } from '../../../src/wirecheck/walk';
import { FakeBench } from '../fake-bench';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { sampleReadings } from '../sample-readings';
import { benchWithSheet, button, walkStops } from './samples';

expectQuiet();

function forget(): void {
  sessionStorage.clear();
  history.replaceState(null, '', location.pathname + location.search);
}
beforeEach(forget);
afterEach(forget);

const shown = (stage: Element) =>
  ['sheet', 'wiring', 'ear', 'walk', 'in-force'].filter(
    (name) => findAll(stage, `ll-${name}-sheet`).length > 0,
  );

describe('the sheets of Patch', () => {
  it('begin with the processor until one is chosen, then with the wiring', async () => {
    expect(shown(await mount('ll-patch', { bench: new FakeBench('5.2.4') }))).toEqual(['sheet']);
    expect(shown(await mount('ll-patch', { bench: await benchWithSheet('5.2.4', 11) }))).toEqual([
      'wiring',
    ]);
  });

  it('stay with the processor when one is chosen there, and point to the wiring', async () => {
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-patch', { bench }, 1000);
    await userEvent.click(button(stage, 'Eleven outputs'));
    await expect.poll(() => bench.state.document.sheet).not.toBeNull();
    await settle(stage);
    expect(shown(stage)).toEqual(['sheet']);
    expect(find(stage, '.onward').getAttribute('href')).toBe('#patch/wiring');
  });

  it('are walked by their links, and the address names them', async () => {
    const stage = await mount('ll-patch', { bench: await benchWithSheet('5.2.4', 11) }, 1000);
    const links = findAll<HTMLAnchorElement>(find(stage, 'll-sheet-nav'), 'a');
    expect(links.map((link) => plain(link.textContent ?? ''))).toEqual([
      'Processor',
      'Wiring',
      'Ear check',
      'Walk check',
      'In force',
    ]);
    for (const [index, name] of [
      [2, 'ear'],
      [3, 'walk'],
      [4, 'in-force'],
      [0, 'sheet'],
      [1, 'wiring'],
    ] as const) {
      const moved = new Promise((resolve) =>
        window.addEventListener('hashchange', resolve, { once: true }),
      );
      links[index]?.click();
      await moved;
      await settle(stage);
      expect(shown(stage)).toEqual([name]);
      expect(location.hash).toBe(`#patch/${name}`);
    }
  });

  it('have a sentence for a title', async () => {
    const title = async (layout: string, outputs: 7 | 11 | 16) => {
      const bench = await benchWithSheet(layout, outputs);
      return textOf(find(await mount('ll-patch', { bench }), 'h1'));
    };
    expect(await title('5.2.4', 11)).toBe('Each of the 11 speakers has its output');
    expect(await title('9.1.4', 11)).toBe('9.1.4 cannot be wired to this processor');
  });
});

describe('where Patch stands on the rail', () => {
  const standing = async (layout: string, earAnswers: EarAnswers) => {
    const bench = await benchWithSheet(layout, 11);
    bench.set({ document: { ...bench.state.document, earAnswers } });
    return patchStanding(bench.state);
  };
  const right = { kind: 'here' } as const;

  it('is done once every channel was heard from its own speaker', async () => {
    const heard = { FL: right, FR: right, 'Sub 1': right };
    expect(await standing('2.1', heard)).toEqual({ done: true, missing: null });
    expect((await standing('3.1', heard)).done).toBe(false);
  });

  it('is done once every speaker was visited and nothing was found, as the title says', async () => {
    const bench = await benchWithSheet('5.0', 11);
    const labels = bench.state.layout.channels.map(({ label }) => label);
    const stops = walkStops(labels);
    const after = (walk: readonly WalkStop[]) => {
      bench.set({ document: { ...bench.state.document, rig: 'live', walk } });
      return { ...patchStanding(bench.state), title: patchTitle(bench.state, 'walk').title };
    };
    expect(after(stops)).toMatchObject({ done: true, missing: null });
    expect(after(stops).title).toContain('Walked');
    expect(after(stops.slice(1))).toMatchObject({ done: false });
    expect(after(walkStops(labels, { FL: 'FR', FR: 'FL' })).missing).toContain(
      'Channels FR and FL are exchanged.',
    );
  });

  it('needs a take in a practice room without a hidden fault, and no ear', async () => {
    const bench = await benchWithSheet('2.1', 11);
    expect(patchStanding(bench.state).done).toBe(false);
    bench.set({ readings: sampleReadings(bench.state.layout) });
    expect(patchStanding(bench.state)).toEqual({ done: true, missing: null });
    const { document } = bench.state;
    bench.set({ document: { ...document, practice: { ...document.practice, hidden: 3 } } });
    expect(patchStanding(bench.state).missing).toContain('Listen that each output');
  });

  it('says what the ear found wrong, and why nothing can be wired', async () => {
    const crossed: EarAnswers = {
      FL: { kind: 'elsewhere', speaker: 'FR' },
      FR: { kind: 'elsewhere', speaker: 'FL' },
    };
    expect((await standing('2.1', crossed)).missing).toBe('Channels FL and FR are exchanged.');
    expect((await standing('9.1.4', {})).missing).toContain('the wides cannot be wired together');
  });
});
