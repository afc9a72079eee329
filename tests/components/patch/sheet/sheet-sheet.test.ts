import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/patch/sheet/sheet-sheet';
import { parseSheet } from '../../../../src/system/sheet/parse-sheet';
import { stepsOf } from '../../../../src/system/sheet/steps-of-sheet';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { benchWithSheet, button, sampleSheet, sampleText } from '../samples';

expectQuiet();

/** Hands a file to the drop zone, as a browser does after the choice. */
async function bring(sheet: HTMLElement, text: string): Promise<void> {
  const file = new File([text], 'processor.json', { type: 'application/json' });
  find(sheet, 'll-file-drop').dispatchEvent(
    new CustomEvent('ll-file', { detail: file, bubbles: true, composed: true }),
  );
  await file.text();
  await settle(sheet);
}

/** The field of the editor with this label; `nth` counts from 0 where several have it. */
function field(root: Element, label: string, nth = 0): HTMLInputElement {
  const found = findAll(root, 'll-draft-field').filter(
    (one) => one.getAttribute('label') === label,
  )[nth];
  if (!found) throw new RangeError(`no field ${label}`);
  return find<HTMLInputElement>(found, 'input');
}

async function editing(outputs: 7 | 11 | 16 = 11) {
  const bench = await benchWithSheet('5.2.4', outputs);
  const before = bench.state.document;
  const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
  await userEvent.click(button(sheet, 'Edit as a draft'));
  await settle(sheet);
  return { bench, before, sheet };
}

describe('choosing a processor', () => {
  it('takes a sample, says that it is invented, and makes its steps the session’s', async () => {
    const bench = new FakeBench('5.2.4');
    const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
    await userEvent.click(button(sheet, 'Eleven outputs'));
    await expect.poll(() => bench.state.document.sheet?.outputs.length).toBe(13);
    await settle(sheet);
    expect(textOf(sheet)).toContain('Invented: this sheet describes no existing processor.');
    expect(bench.state.document.processor).toEqual(stepsOf(await sampleSheet(11)));
  });

  it('takes feet as metres', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
    await bring(sheet, await sampleText(7));
    expect(bench.state.document.processor.distanceStepMetres).toBeCloseTo(0.1524, 10);
  });

  it('forgets what was heard on other outputs, and crossovers that are no steps', async () => {
    const bench = await benchWithSheet('5.1', 11);
    const heard = { FL: { kind: 'here' } } as const;
    const { document } = bench.state;
    bench.set({
      document: { ...document, earAnswers: heard, chosenCrossoverHz: { fronts: 70, sides: 80 } },
    });
    const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
    await bring(sheet, await sampleText(11));
    expect(bench.state.document.earAnswers).toEqual(heard);
    await bring(sheet, await sampleText(7));
    expect(bench.state.document.earAnswers).toEqual({});
    expect(bench.state.document.chosenCrossoverHz).toEqual({ sides: 80 });
  });

  for (const [what, spoil, words] of [
    ['a file that is no JSON', () => '{', 'it is not JSON'],
    [
      'a field that is missing',
      (text: string) => text.replace('"distance"', '"farness"'),
      '"distance" is missing',
    ],
    [
      'two outputs of one name',
      (text: string) => text.replace('"Front right"', '"Front left"'),
      '"outputs[1].name" is "Front left", which another output has',
    ],
    [
      'an unknown version',
      (text: string) => text.replace('"version": 1', '"version": 7'),
      '"version" is 7',
    ],
  ] as const) {
    it(`refuses ${what} with the field, and leaves the session as it is`, async () => {
      const bench = await benchWithSheet('5.2.4', 16);
      const before = bench.state.document;
      const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
      await bring(sheet, spoil(await sampleText(11)));
      expect(textOf(find(sheet, '[role=alert]'))).toContain(words);
      expect(bench.state.document).toBe(before);
      await bring(sheet, await sampleText(11));
      expect(findAll(sheet, '[role=alert]')).toEqual([]);
    });
  }

  it('saves the sheet in use as a file that can be brought back', async () => {
    const bench = await benchWithSheet('5.1', 16);
    const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
    const saved: Blob[] = [];
    const names: string[] = [];
    const { createObjectURL } = URL;
    const { click } = HTMLAnchorElement.prototype;
    URL.createObjectURL = (blob: Blob) => {
      saved.push(blob);
      return 'blob:nothing';
    };
    HTMLAnchorElement.prototype.click = function () {
      names.push(this.download);
    };
    await userEvent.click(button(sheet, 'Save as a file'));
    URL.createObjectURL = createObjectURL;
    HTMLAnchorElement.prototype.click = click;
    expect(names).toEqual(['sixteen-outputs-invented.json']);
    expect(parseSheet((await saved[0]?.text()) ?? '')).toEqual(bench.state.document.sheet);
  });

  it('shows markup in names as plain text', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-sheet-sheet', { bench }, 1000);
    const name = '<img src=x onerror=alert(1)>';
    await bring(sheet, (await sampleText(7)).replace('Seven outputs, invented', name));
    expect(textOf(find(sheet, '#chosen'))).toBe(name);
    expect(findAll(sheet, 'img')).toEqual([]);
  });
});

describe('the draft of a sheet', () => {
  it('names the field while it is typed, and holds everything back until it is sound', async () => {
    const { bench, before, sheet } = await editing();
    await userEvent.fill(field(sheet, 'Distance step'), 'wide');
    await settle(sheet);
    expect(textOf(find(sheet, '.foot [role=status]'))).toContain(
      '"distance.step" is "wide" and should be a number',
    );
    expect(field(sheet, 'Distance step').getAttribute('aria-invalid')).toBe('true');
    expect(button(sheet, 'Use this sheet').disabled).toBe(true);
    await userEvent.fill(field(sheet, 'Distance step'), '0,05');
    await settle(sheet);
    expect(field(sheet, 'Distance step').getAttribute('aria-invalid')).toBe('false');
    expect(bench.state.document).toBe(before);
    await userEvent.click(button(sheet, 'Use this sheet'));
    await settle(sheet);
    expect(bench.state.document.sheet?.distance.step).toBe(0.05);
    expect(bench.state.document.processor.distanceStepMetres).toBe(0.05);
    expect(findAll(sheet, 'll-sheet-editor')).toHaveLength(0);
  });

  for (const [label, nth, text, words] of [
    ['Roles', 0, 'FL, Kitchen', '"outputs[0].roles[1].channel" is "Kitchen"'],
    ['Roles', 5, 'BL, TpBL unless TpBR', '"outputs[5].roles[1].onlyWithout" names TpBR'],
    ['Name', 1, 'Front left', '"outputs[1].name" is "Front left", which another output has'],
    ['Pair 4', 0, 'A1', '"pairs[3][1]" is missing'],
    ['Pair 4', 0, 'A1, B2', 'joins outputs of which one can carry'],
    ['Chain 1 of channels', 0, 'FL, FR > FL', '"filling.channels[0]" names "FL" twice'],
    [
      'Chain 1 of outputs',
      0,
      'S1 > S9',
      '"filling.outputs[0]" names "S9", and no output has that id',
    ],
    ['Steps, from low to high', 0, '40, 60, 50', '"crossover.stepsHz[2]" is 50 and comes after 60'],
    ['Limit 1: groups', 0, 'kitchen', '"crossover.limits[0].groups[0]" is "kitchen"'],
    ['To', 0, '59', '"crossover.limits[0]" leaves no step'],
    ['Unlocks', 0, 'subs', '"fullRange[0].unlocks" names the subs'],
    ['Low-pass steps', 0, '20, 30', '"subLowPass.stepsHz" ends at 30 Hz'],
    ['Low cut steps', 0, '20, 20', '"lowCut.stepsHz[1]" is 20'],
    ['Longest', 0, '0', '"distance.high" is 0'],
    ['Highest', 0, '-12', '"level.lowDb" is -12'],
    ['Its order', 0, '2.5', '"filters.highPass.order" is 2.5 and should be a whole number'],
    ['Name of the processor', 0, '', '"name" is ""'],
  ] as const) {
    it(`refuses ${label}: “${text}”`, async () => {
      const { bench, before, sheet } = await editing();
      const input = field(sheet, label, nth);
      await userEvent.fill(input, text);
      await settle(sheet);
      expect(textOf(find(sheet, '.foot [role=status]'))).toContain(words);
      expect(button(sheet, 'Use this sheet').disabled).toBe(true);
      expect(bench.state.document).toBe(before);
    });
  }

  it('lets the rules follow an output whose id is changed', async () => {
    const { bench, sheet } = await editing();
    await userEvent.fill(field(sheet, 'Id', 7), 'Left, A');
    await userEvent.keyboard('{Tab}');
    await settle(sheet);
    expect(textOf(find(sheet, '.foot [role=status]'))).toContain('This sheet is sound');
    await userEvent.click(button(sheet, 'Use this sheet'));
    expect(bench.state.document.sheet?.pairs[3]).toEqual(['Left, A', 'A2']);
  });

  it('moves, adds and takes away outputs by buttons alone', async () => {
    const { bench, sheet } = await editing();
    const press = async (label: string) => {
      await userEvent.click(find(sheet, `button[aria-label="${label}"]`));
      await settle(sheet);
    };
    await press('Move output 3 back');
    await userEvent.click(button(sheet, 'Add an output'));
    await settle(sheet);
    await press('Remove output 14');
    await userEvent.click(button(sheet, 'Use this sheet'));
    expect(bench.state.document.sheet?.outputs.map(({ id }) => id).slice(0, 4)).toEqual([
      '1',
      '3',
      '2',
      '4',
    ]);
  });

  it('takes a set of exclusive choices and the names of height pairs', async () => {
    const { bench, sheet } = await editing();
    await userEvent.click(button(sheet, 'Add a set of choices'));
    await settle(sheet);
    await userEvent.fill(field(sheet, 'Choice 1: channels'), 'FLw, FRw');
    await userEvent.fill(field(sheet, 'Choice 2: channels'), 'TpBL, TpBR');
    await userEvent.fill(field(sheet, 'On outputs', 1), 'B1, B2');
    const naming = findAll<HTMLSelectElement>(sheet, 'select')[0];
    if (!naming) throw new RangeError('no names of height pairs');
    await userEvent.selectOptions(naming, 'back');
    await settle(sheet);
    await userEvent.click(button(sheet, 'Use this sheet'));
    expect(bench.state.document.sheet?.exclusive[0]?.choices).toEqual([
      { channels: ['FLw', 'FRw'] },
      { channels: ['TpBL', 'TpBR'], outputs: ['B1', 'B2'] },
    ]);
    expect(bench.state.document.sheet?.heightNaming['1']).toEqual(['back']);
  });

  it('stays where it is when the sheet is left and comes back, and goes when it is discarded', async () => {
    const { bench, before, sheet } = await editing(7);
    await userEvent.fill(field(sheet, 'Name of the processor'), 'Mine');
    sheet.remove();
    const again = await mount('ll-sheet-sheet', { bench }, 366);
    expect(field(again, 'Name of the processor').value).toBe('Mine');
    expect(again.scrollWidth).toBeLessThanOrEqual(366);
    await userEvent.click(button(again, 'Discard the draft'));
    await settle(again);
    expect(bench.state.document).toBe(before);
    expect(textOf(again)).toContain('Seven outputs, invented');
  });
});
