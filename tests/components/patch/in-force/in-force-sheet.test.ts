import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/patch/in-force/in-force-sheet';
import { nothingInForce } from '../../../../src/system/declared-settings';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { sampleTake } from '../../sample-session';
import { benchWithSheet, button } from '../samples';

expectQuiet();

/** Types into the field of this name and leaves it. */
async function type(sheet: HTMLElement, label: string, text: string): Promise<HTMLInputElement> {
  const input = find<HTMLInputElement>(find(sheet, `ll-draft-field[label="${label}"]`), 'input');
  await userEvent.fill(input, text);
  await userEvent.keyboard('{Tab}');
  await settle(sheet);
  return input;
}

function select(sheet: Element, label: string): HTMLSelectElement {
  const found = findAll(sheet, 'label.select').find((one) =>
    plain(one.textContent ?? '').startsWith(label),
  );
  if (!found) throw new RangeError(`no choice ${label}`);
  return find<HTMLSelectElement>(found, 'select');
}

describe('what is in force in the processor', () => {
  it('is typed in the processor’s unit and kept in metres', async () => {
    const bench = await benchWithSheet('5.1', 7);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    const input = await type(sheet, 'Distance of FL', '10,5');
    await type(sheet, 'Trim of SiL', '\u22123');
    expect(bench.state.document.inForce.distanceMetres.FL).toBeCloseTo(3.2004, 10);
    expect(bench.state.document.inForce.trimDb).toEqual({ SiL: -3 });
    expect(input.value).toBe('10.5');
  });

  it('takes metres where no processor was chosen', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    await type(sheet, 'Distance of FC', '2.4');
    expect(bench.state.document.inForce.distanceMetres).toEqual({ FC: 2.4 });
  });

  it('is taken out again by an empty field', async () => {
    const bench = await benchWithSheet('5.1', 11);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    await type(sheet, 'Trim of FL', '2');
    await type(sheet, 'Trim of FL', '');
    expect(bench.state.document.inForce.trimDb).toEqual({});
  });

  for (const [label, text, words] of [
    ['Distance of FL', '-1', 'lies between 0 and 18 m'],
    ['Distance of FL', '19', 'lies between 0 and 18 m'],
    ['Distance of FL', 'far', '“far” is not a number'],
    ['Trim of FL', '12.5', 'lies between \u221212 and 12 dB'],
    ['Trim of FL', '1e3', '“1e3” is not a number'],
  ] as const) {
    it(`says what is wrong with ${label} ${text}, and changes nothing`, async () => {
      const bench = await benchWithSheet('5.1', 11);
      const before = bench.state.document;
      const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
      const input = await type(sheet, label, text);
      expect(textOf(sheet)).toContain(words);
      expect(input.value).toBe(text);
      expect(bench.state.document).toBe(before);
      await type(sheet, label, '3');
      expect(textOf(sheet)).not.toContain(words);
    });
  }

  it('has a crossover, full range or nothing known for each group', async () => {
    const bench = await benchWithSheet('5.1', 11);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    await userEvent.selectOptions(select(sheet, 'Fronts'), 'full range');
    await userEvent.selectOptions(select(sheet, 'Side surrounds'), 'not known');
    const sides = select(sheet, 'Side surrounds');
    sides.selectedIndex = [...sides.options].findIndex((one) => one.text.startsWith('80'));
    sides.dispatchEvent(new Event('change'));
    await settle(sheet);
    expect(bench.state.document.inForce.crossoverHz).toEqual({ fronts: null, sides: 80 });
    await userEvent.selectOptions(select(sheet, 'Side surrounds'), 'not known');
    expect(bench.state.document.inForce.crossoverHz).toEqual({ fronts: null });
  });

  it('has one crossover for all where the processor has one', async () => {
    const bench = await benchWithSheet('5.1', 7);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    await userEvent.selectOptions(select(sheet, 'All speakers'), 'full range');
    expect(bench.state.document.inForce.crossoverHz).toEqual({
      fronts: null,
      centre: null,
      sides: null,
    });
  });

  it('says what an equaliser does, and forgets all at a press', async () => {
    const bench = await benchWithSheet('5.1', 11);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    find<HTMLInputElement>(sheet, 'input[type=radio][value="on"]').click();
    await settle(sheet);
    expect(bench.state.document.inForce.equaliser).toBe('on');
    expect(textOf(sheet)).toContain('Switch it off while you measure');
    await userEvent.click(button(sheet, 'Forget all of it'));
    expect(bench.state.document.inForce).toEqual(nothingInForce);
  });

  it('has the low-pass of the subs, in the steps the processor has for it', async () => {
    const bench = await benchWithSheet('5.1', 11);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    const lowPass = select(sheet, 'Low-pass of the subs');
    const steps = bench.state.document.sheet?.subLowPass.stepsHz ?? [];
    expect(lowPass.options.length).toBe(2 + steps.length);
    await userEvent.selectOptions(lowPass, 'none');
    expect(bench.state.document.inForce.crossoverHz).toEqual({ subs: null });
    const stereo = await mount('ll-in-force-sheet', { bench: new FakeBench('2.0') }, 1000);
    expect(textOf(stereo)).not.toContain('Low-pass of the subs');
  });

  it('says what a crossover in force means for the readings', async () => {
    const bench = await benchWithSheet('5.1', 7);
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    expect(textOf(sheet)).toContain('What is not known is read as full range.');
    await userEvent.selectOptions(select(sheet, 'All speakers'), '80\u202fHz');
    await settle(sheet);
    expect(textOf(sheet)).toContain('The subs play what lies below');
  });

  it('asks for the distances that are still missing beside the others', async () => {
    const bench = new FakeBench('2.1');
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    expect(textOf(sheet)).not.toContain('no distance yet');
    await type(sheet, 'Distance of FL', '2.4');
    expect(textOf(sheet)).toContain('FR and Sub 1 have no distance yet.');
    await type(sheet, 'Distance of FR', '2.4');
    expect(textOf(sheet)).toContain('Sub 1 has no distance yet.');
    await type(sheet, 'Distance of Sub 1', '3');
    expect(textOf(sheet)).not.toContain('no distance yet');
  });

  it('can be declared for the takes already made, by keyboard', async () => {
    const bench = new FakeBench('2.1');
    const take = { ...sampleTake('2.1'), rig: 'live' as const, simulated: false };
    bench.set({ document: { ...bench.state.document, rig: 'live', takes: [take] } });
    const sheet = await mount('ll-in-force-sheet', { bench }, 1000);
    expect(textOf(sheet)).toContain('Each take remembers what was declared');
    await type(sheet, 'Trim of FL', '3');
    expect(textOf(sheet)).toContain('One take at Seat 1 was played while something else');
    button(sheet, 'It was in force by then').focus();
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.state.document.takes[0]?.inForce?.trimDb).toEqual({ FL: 3 });
    expect(textOf(sheet)).toContain('Each take remembers what was declared');
  });

  it('says that the practice room has no processor', async () => {
    const sheet = await mount('ll-in-force-sheet', { bench: new FakeBench('2.1') }, 1000);
    expect(textOf(sheet)).toContain('The practice room has no processor');
  });

  it('fits every width', async () => {
    const bench = await benchWithSheet('9.4.6', 16);
    for (const width of [366, 720, 1080]) {
      const sheet = await mount('ll-in-force-sheet', { bench }, width);
      expect(sheet.scrollWidth).toBeLessThanOrEqual(width);
      expect(notNumbers(sheet)).toEqual([]);
    }
  });
});
