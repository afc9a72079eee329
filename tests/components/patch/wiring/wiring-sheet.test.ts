import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/patch/wiring/wiring-sheet';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, notNumbers, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { benchWithSheet, button, sampleSheet } from '../samples';

expectQuiet();

/** What each output of the drawing shows, in its order. */
function row(sheet: Element): string[] {
  return findAll(find(sheet, 'll-wiring-drawing'), 'li').map(textOf);
}

describe('the row of outputs', () => {
  it('shows 5.2.4 on eleven outputs in the order of the back, the free ones open', async () => {
    const bench = await benchWithSheet('5.2.4', 11);
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    expect(row(sheet)).toEqual([
      'Front left FL front left',
      'Front right FR front right',
      'Centre FC front centre',
      'Side left SiL side left',
      'Side right SiR side right',
      'Back left open',
      'Back right open',
      'Pair A left TpFL top front left',
      'Pair A right TpFR top front right',
      'Pair B left TpBL top back left',
      'Pair B right TpBR top back right',
      'Sub 1 Sub 1 subwoofer 1',
      'Sub 2 Sub 2 subwoofer 2',
    ]);
    expect(findAll(sheet, '.plug')).toHaveLength(11);
    expect(findAll(sheet, 'll-speaker-icon').length).toBeGreaterThanOrEqual(11);
    expect(findAll(sheet, '.conflict')).toEqual([]);
  });

  it('says what a single pair of heights is called by the processor', async () => {
    const bench = await benchWithSheet('5.1.2', 11);
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    expect(row(sheet)[9]).toBe('Pair B left TpFL top front left plays as TpSiL');
  });

  it('is solved again when the layout or the processor changes', async () => {
    const bench = await benchWithSheet('5.1', 11);
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    bench.setLayout('7.1');
    await settle(sheet);
    expect(row(sheet)[5]).toBe('Back left BL back left');
    bench.set({ document: { ...bench.state.document, sheet: await sampleSheet(7) } });
    await settle(sheet);
    expect(row(sheet)).toHaveLength(8);
  });

  it('is also the way to pick a speaker', async () => {
    const bench = await benchWithSheet('5.2.4', 11);
    const sheet = await mount('ll-wiring-sheet', { bench, selected: 'FC' }, 1000);
    const picked: unknown[] = [];
    const hear = (event: CustomEvent) => picked.push(event.detail);
    document.body.addEventListener('ll-select', hear);
    await userEvent.click(button(find(sheet, 'll-wiring-drawing'), 'TpBL'));
    await userEvent.click(button(find(sheet, 'll-wiring-drawing'), 'FC'));
    document.body.removeEventListener('ll-select', hear);
    expect(picked).toEqual(['TpBL', null]);
  });

  it('holds nineteen speakers at every width', async () => {
    const bench = await benchWithSheet('9.4.6', 16);
    for (const width of [366, 720, 1080]) {
      const sheet = await mount('ll-wiring-sheet', { bench }, width);
      expect(findAll(sheet, '.plug')).toHaveLength(19);
      expect(notNumbers(sheet)).toEqual([]);
      expect(sheet.scrollWidth).toBeLessThanOrEqual(width);
    }
  });

  it('asks for a processor where there is none, and shows the take’s own order', async () => {
    const sheet = await mount('ll-wiring-sheet', { bench: new FakeBench('5.1') }, 800);
    expect(find(sheet, 'a.go').getAttribute('href')).toBe('#patch/sheet');
    expect(findAll(find(sheet, 'll-take-outputs'), 'tbody tr')).toHaveLength(6);
    expect(findAll(sheet, 'll-wiring-drawing')).toEqual([]);
  });
});

describe('a layout that cannot be wired', () => {
  it('marks the outputs in conflict and says the rule in a sentence', async () => {
    const bench = await benchWithSheet('9.1.4', 11);
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    expect(findAll(sheet, '.conflict').map(textOf)).toEqual([
      'Pair A left in conflict',
      'Pair A right in conflict',
    ]);
    expect(findAll(sheet, '.plug')).toEqual([]);
    const why = textOf(find(sheet, '.why'));
    for (const words of ['TpFL', 'FLw', 'The front heights and the wides', 'one role per output']) {
      expect(why).toContain(words);
    }
  });

  it('declares the nearest layout at a press, and then wires it', async () => {
    const bench = await benchWithSheet('9.1.4', 11);
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    await userEvent.click(button(sheet, 'Declare 7.1.4 instead'));
    await settle(sheet);
    expect(bench.calls).toEqual(['setLayout 7.1.4']);
    expect(findAll(sheet, '.plug')).toHaveLength(12);
    expect(findAll(sheet, 'll-wiring-refusal')).toEqual([]);
  });

  it('cannot be changed while something runs', async () => {
    const bench = await benchWithSheet('9.1.4', 11);
    bench.set({ activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } });
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    expect(button(sheet, 'Declare 7.1.4 instead').disabled).toBe(true);
  });
});

describe('the printed list', () => {
  it('has a row and a box to tick for each speaker, and lies beside the screen only to print', async () => {
    const bench = await benchWithSheet('5.2.4', 11);
    const sheet = await mount('ll-wiring-sheet', { bench }, 1000);
    window.dispatchEvent(new Event('beforeprint'));
    const page = find(document.body, '.printed');
    const rows = findAll(page, 'tbody tr').map(textOf);
    expect(rows).toHaveLength(13);
    expect(rows[8]).toBe('Pair A right TpFR Top front right');
    expect(rows[5]).toBe('Back left – stays open');
    expect(findAll(page, '.box')).toHaveLength(11);
    expect(textOf(page)).toContain('an invented sample, no existing processor');
    expect(textOf(page)).toContain('Switch amplifiers off');
    window.dispatchEvent(new Event('afterprint'));
    expect(findAll(document.body, '.printed')).toEqual([]);
    sheet.remove();
    window.dispatchEvent(new Event('beforeprint'));
    expect(findAll(document.body, '.printed')).toEqual([]);
  });

  it('leaves the page alone while nothing is wired', async () => {
    const bench = await benchWithSheet('9.1.4', 11);
    await mount('ll-wiring-sheet', { bench }, 1000);
    window.dispatchEvent(new Event('beforeprint'));
    expect(findAll(document.body, '.printed')).toEqual([]);
  });
});
