import { beforeEach, describe, expect, it } from 'vitest';
import '../../../components/theme/base.css';
import '../../../components/prove/prove-stage';
import { gatherHandover } from '../../../src/handover/gather-handover';
import { benchWith } from '../bench-of';
import { FakeBench } from '../fake-bench';
import { inventedReadings, layout19, layout524 } from '../fixtures';
import {
  find,
  findAll,
  mount,
  notNumbers,
  overlappingTexts,
  plain,
  settle,
  textOf,
} from '../mount';
import { sampleSheet } from '../patch/samples';
import { expectQuiet } from '../quiet';
import { toldProof } from './proof-bench';

expectQuiet();
beforeEach(() => {
  location.hash = '#prove/handover';
});

const millimetre = 96 / 25.4;

/** A bench with settings of a processor, and a proof of as many lines as such a system has. */
async function handedOver(): Promise<FakeBench> {
  const sheet = await sampleSheet(11);
  const bench = benchWith(layout524, inventedReadings(layout524), { sheet });
  const told = toldProof({ trimDb: { FR: -2 } });
  bench.set({ proof: told });
  return bench;
}

describe('the handover sheet', () => {
  it('says what is missing before anything is measured', async () => {
    const stage = await mount('ll-prove', { bench: new FakeBench() });
    const page = textOf(find(stage, '.handover'));
    expect(page).toContain('Nothing was proved');
    expect(page).toContain('There are no settings');
    expect(notNumbers(stage)).toEqual([]);
  });

  it('shows plan, wiring with settings, proof, conditions and cautions', async () => {
    const bench = await handedOver();
    const stage = await mount('ll-prove', { bench }, 1060);
    const page = find(stage, '.handover');
    expect(findAll(page, '.plan .shape')).toHaveLength(11);
    const rows = findAll(page, 'tbody tr').map((row) => plain(row.textContent ?? ''));
    expect(rows).toHaveLength(13);
    expect(findAll(page, '.response .trace')).toHaveLength(4);
    for (const line of findAll(page, '.response')) {
      expect(line.getAttribute('aria-label')).toMatch(/^Response: .*\b1.kHz \S+.dB/);
    }
    expect(rows[0]).toMatch(/^Front left FL \S+ (m|ft)/);
    expect(rows[5]).toContain('open');
    const said = textOf(page);
    for (const heading of ['Conditions', 'Wiring and settings', 'Subs', 'Proof:', 'Cautions']) {
      expect(said).toContain(heading);
    }
    expect(said).toContain('✗ Front right');
    expect(said).toContain('Simulated.');
  });

  it('is marked as simulated across the page only when it is', async () => {
    const bench = await handedOver();
    const stage = await mount('ll-prove', { bench });
    const across = () => getComputedStyle(find(stage, '.handover'), '::before').content;
    expect(across()).toBe('"simulated"');
    const { readings, proposal, proof } = bench.state;
    bench.setRig('live');
    bench.set({
      readings: readings && { ...readings, simulated: false },
      proposal: proposal && { ...proposal, simulated: false },
      proof: proof && { ...proof, simulated: false },
    });
    await settle(stage);
    expect(across()).toBe('none');
  });

  it('keeps the notes, and shows them as they were typed', async () => {
    const bench = await handedOver();
    const stage = await mount('ll-prove', { bench });
    const field = find<HTMLTextAreaElement>(stage, 'textarea');
    field.value = 'Left wall <b>soft</b>.\nAmplifier warm.';
    field.dispatchEvent(new Event('change'));
    await settle(stage);
    expect(bench.calls).toEqual(['Write notes']);
    expect(bench.state.document.notes).toBe('Left wall <b>soft</b>.\nAmplifier warm.');
    expect(find(stage, '.handover .notes, p.notes').textContent).toBe(field.value);
    expect(findAll(stage, '.notes b')).toEqual([]);
  });

  it('says how much of too long notes is kept, and leaves them to be shortened', async () => {
    const bench = await handedOver();
    const stage = await mount('ll-prove', { bench });
    const field = find<HTMLTextAreaElement>(stage, 'textarea');
    const write = async (text: string): Promise<void> => {
      field.value = text;
      field.dispatchEvent(new Event('change'));
      await settle(stage);
    };
    await write('x'.repeat(100_000));
    expect(bench.state.document.notes).toHaveLength(20_000);
    expect(field.value).toHaveLength(100_000);
    expect(textOf(find(stage, '[role="alert"]'))).toContain(
      '100000 letters and a session keeps the first 20000',
    );
    await write('Short.');
    expect(bench.state.document.notes).toBe('Short.');
    expect(findAll(stage, '[role="alert"]')).toEqual([]);
  });

  it('prints alone, and leaves nothing behind', async () => {
    const bench = await handedOver();
    await mount('ll-prove', { bench });
    const sheets = document.adoptedStyleSheets.length;
    window.dispatchEvent(new Event('beforeprint'));
    expect(document.querySelectorAll('body > .printed .handover .plan .shape')).toHaveLength(11);
    expect(document.adoptedStyleSheets).toHaveLength(sheets + 2);
    window.dispatchEvent(new Event('afterprint'));
    expect(document.querySelector('.printed')).toBeNull();
    expect(document.adoptedStyleSheets).toHaveLength(sheets);
  });

  it('is the record that the files hold', async () => {
    const bench = await handedOver();
    const stage = await mount('ll-prove', { bench });
    const { outputs } = gatherHandover(bench.state, '2025-01-01T00:00:00.000Z');
    const cells = findAll(stage, '.handover tbody td:nth-child(3)').map((one) =>
      one.textContent?.replaceAll('\u202f', ' '),
    );
    expect(cells).toEqual(outputs.map(({ distance }) => distance ?? '–'));
  });
});

describe('the handover page', () => {
  // What is left of A4 and of Letter between margins of 15 mm.
  for (const [paper, wide, high] of [
    ['A4', 180, 267],
    ['Letter', 185.9, 249.4],
  ] as const) {
    it(`of eleven speakers goes on one page of ${paper}`, async () => {
      const bench = await handedOver();
      const sheet = await mount('ll-handover-sheet', { bench });
      const page = find(sheet, '.handover').cloneNode(true) as HTMLElement;
      const box = document.createElement('div');
      box.style.width = `${wide * millimetre}px`;
      sheet.renderRoot.append(box);
      box.append(page);
      expect(page.getBoundingClientRect().height / millimetre).toBeLessThan(high);
    });
  }

  for (const width of [358, 700, 1060]) {
    it(`stays inside ${width} px, with nothing on top of another`, async () => {
      const bench = await handedOver();
      const stage = await mount('ll-prove', { bench }, width);
      expect(overlappingTexts(stage)).toEqual([]);
      expect(notNumbers(stage)).toEqual([]);
      expect(stage.scrollWidth).toBeLessThanOrEqual(width);
      const page = find(stage, '.handover');
      expect(page.scrollWidth).toBeLessThanOrEqual(page.clientWidth);
    });
  }

  it('holds nineteen speakers', async () => {
    const bench = benchWith(layout19, inventedReadings(layout19));
    const stage = await mount('ll-prove', { bench }, 700);
    expect(findAll(stage, '.plan .shape')).toHaveLength(19);
    expect(overlappingTexts(stage)).toEqual([]);
    expect(notNumbers(stage)).toEqual([]);
  });
});
