import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/plan/speaker-palette';
import type { SpeakerPalette } from '../../../components/plan/speaker-palette';
import { find, findAll, mount, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { PlanBench } from './plan-bench';

expectQuiet();

async function shown(bench: PlanBench): Promise<SpeakerPalette> {
  return mount('ll-speaker-palette', { bench }, 360);
}

function box(palette: SpeakerPalette, group: string): HTMLInputElement {
  return find<HTMLInputElement>(find(palette, `[data-group="${group}"]`), 'input');
}

describe('the palette of speakers', () => {
  it('shows what is there', async () => {
    const palette = await shown(new PlanBench('5.2.4'));
    const there = ['centre', 'sides', 'front heights', 'back heights'];
    for (const group of [...there, 'backs', 'wides', 'middle heights']) {
      expect(box(palette, group).checked, group).toBe(there.includes(group));
    }
    expect(find<HTMLInputElement>(find(palette, 'll-choice'), 'input[value="2"]').checked).toBe(
      true,
    );
  });

  it('adds and takes away by mouse and by keyboard', async () => {
    const bench = new PlanBench('5.1');
    const palette = await shown(bench);
    await userEvent.click(box(palette, 'middle heights'));
    expect(bench.state.layout.name).toBe('FL FR FC Sub1 SiL SiR TpSiL TpSiR');
    box(palette, 'centre').focus();
    await userEvent.keyboard(' ');
    expect(bench.state.layout.name).toBe('FL FR Sub1 SiL SiR TpSiL TpSiR');
    await userEvent.click(box(palette, 'middle heights'));
    await settle(palette);
    find<HTMLInputElement>(find(palette, 'll-choice'), 'input[value="3"]').click();
    expect(bench.state.layout.name).toBe('4.3');
  });

  it.each([
    ['3.1', 'backs'],
    ['7.1', 'sides'],
  ])('refuses in %s what makes no system with %s, and shows what is there', async (name, group) => {
    const bench = new PlanBench(name);
    const palette = await shown(bench);
    const before = box(palette, group).checked;
    await userEvent.click(box(palette, group));
    await settle(palette);
    expect(textOf(find(palette, '[role=alert]'))).toContain('a lone pair of surrounds');
    expect(bench.calls).toEqual([]);
    expect(bench.state.layout.name).toBe(name);
    expect(box(palette, group).checked).toBe(before);
  });

  it('says of each what is lost when it is listed and not there, and where it goes when left out', async () => {
    const text = textOf(await shown(new PlanBench('5.1')));
    expect(text).toContain('When FC is listed and not there, nobody plays dialogue.');
    expect(text).toContain('When BL and BR are left out, SiL and SiR take over');
    expect(text).toContain('When subs are listed and not there, nobody plays');
    const without = textOf(await shown(new PlanBench('2.0')));
    expect(without).toContain('When FC is left out, FL and FR take over dialogue');
    expect(without).toContain('When subs are left out, FL and FR take over');
  });

  it('lies still while a take runs', async () => {
    const bench = new PlanBench('5.1');
    bench.runTake();
    const palette = await shown(bench);
    const boxes = findAll<HTMLInputElement>(palette, 'input[type=checkbox]');
    expect(boxes.map(({ disabled }) => disabled)).toEqual(boxes.map(() => true));
    expect(find(find(palette, 'll-choice'), 'input').closest('fieldset')?.disabled).toBe(true);
  });
});
