import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/plan/speaker-panel';
import type { SpeakerPanel } from '../../../components/plan/speaker-panel';
import type { ChannelLabel } from '../../../src/system/channel';
import { find, findAll, mount, notNumbers, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { PlanBench } from './plan-bench';

expectQuiet();

const at = (azimuthDegrees: number, elevationDegrees: number, distanceMetres: number | null) => ({
  azimuthDegrees,
  elevationDegrees,
  distanceMetres,
});

async function shown(bench: PlanBench, selected: ChannelLabel | null): Promise<SpeakerPanel> {
  return mount('ll-speaker-panel', { bench, selected }, 380);
}

function field(panel: SpeakerPanel, label: string): HTMLInputElement {
  return find<HTMLInputElement>(find(panel, `ll-number[label="${label}"]`), 'input');
}

async function type(panel: SpeakerPanel, label: string, text: string): Promise<void> {
  await userEvent.fill(field(panel, label), text);
  await userEvent.keyboard('{Enter}');
  await settle(panel);
}

async function press(panel: SpeakerPanel, text: string): Promise<void> {
  const button = findAll(panel, 'button').find((one) => textOf(one) === text);
  if (!button) throw new RangeError(`no button says ${text}`);
  await userEvent.click(button);
  await settle(panel);
}

describe('the panel of a speaker', () => {
  it('asks to pick one when none is', async () => {
    expect(textOf(await shown(new PlanBench('5.1'), null))).toContain('No speaker is picked');
  });

  it('says the range of the standard and the role of a lone pair of surrounds', async () => {
    const panel = await shown(new PlanBench('5.1'), 'SiR');
    expect(textOf(panel)).toContain('BS.775 and BS.2051 have it 100° to 120° right, 0° to 15° up.');
    expect(textOf(panel)).toContain('it is the side pair, wherever it stands');
    expect(textOf(await shown(new PlanBench('7.1'), 'SiR'))).not.toContain('it is the side pair');
    expect(textOf(await shown(new PlanBench('5.1'), 'Sub 1'))).toContain('give subs no place');
  });

  it('declares an angle, an elevation and a distance that are typed', async () => {
    const bench = new PlanBench('5.1.2');
    const panel = await shown(bench, 'TpFL');
    expect(field(panel, 'Distance').value).toBe('–');
    await type(panel, 'Angle', '35');
    await type(panel, 'Elevation', '42,5');
    await type(panel, 'Distance', '1.85');
    expect(bench.system.places).toEqual({ TpFL: at(35, 42.5, 1.85) });
    expect(bench.calls).toEqual(['Move TpFL', 'Move TpFL', 'Move TpFL']);
    await press(panel, 'Distance not known');
    expect(bench.place('TpFL')).toEqual(at(35, 42.5, null));
    await press(panel, 'Back to its nominal place');
    expect(bench.system.places).toEqual({});
    expect(field(panel, 'Angle').value).toBe('30');
  });

  it('declares metres from the seat just as well', async () => {
    const bench = new PlanBench('5.1', { places: { FL: at(30, 0, 2) } });
    const panel = await shown(bench, 'FL');
    find<HTMLInputElement>(panel, 'input[value=metres]').click();
    await settle(panel);
    expect(field(panel, 'To the right').value).toBe('−1.00');
    expect(field(panel, 'Behind').value).toBe('−1.73');
    await type(panel, 'To the right', '-1.5');
    await type(panel, 'Behind', '-2');
    // The triangle of sides 3, 4 and 5, half as large; as fine as four decimals tell.
    expect(bench.place('FL')?.azimuthDegrees).toBeCloseTo((Math.atan(3 / 4) * 180) / Math.PI, 3);
    expect(bench.place('FL')?.distanceMetres).toBeCloseTo(2.5, 3);
  });

  it.each([
    ['Angle', '181', 'between −180 and 180'],
    ['Elevation', '-95', 'between −90 and 90'],
    ['Distance', '-2', 'more than zero, not −2 m'],
    ['Distance', '0', 'more than zero'],
    ['Distance', '0.2', 'TpFL would stand at the seat'],
    ['Distance', 'far', '“far” is not a length'],
    ['Angle', '-30', 'TpFL and TpFR would stand in one spot'],
    ['Distance', '9', 'outside the room'],
  ])('refuses %s %s: %s', async (label, text, sentence) => {
    const room = {
      lengthMetres: 5,
      widthMetres: 4,
      heightMetres: 2.5,
      seatFromFrontMetres: 3,
      seatFromLeftMetres: 2,
      earHeightMetres: 1.1,
    };
    const bench = new PlanBench('5.1.2', { room });
    const before = bench.state.document;
    const panel = await shown(bench, 'TpFL');
    await type(panel, label, text);
    expect(textOf(panel)).toContain(sentence);
    expect(findAll(panel, '[role=alert]')).not.toEqual([]);
    expect(bench.state.document).toBe(before);
    expect(bench.calls).toEqual([]);
  });

  it('shows the number that stays after a refusal', async () => {
    const bench = new PlanBench('5.1', { places: { FL: at(30, 0, 2) } });
    const panel = await shown(bench, 'FL');
    await type(panel, 'Distance', '0.1');
    expect(field(panel, 'Distance').value).toBe('2.00');
  });

  it('says gently what stands out, and puts the partner opposite', async () => {
    const bench = new PlanBench('5.1', { places: { SiL: at(125, 0, 2) } });
    const panel = await shown(bench, 'SiL');
    expect(textOf(panel)).toContain(
      'SiL stands 125° left; BS.775 and BS.2051 have 100° to 120° left.',
    );
    expect(textOf(panel)).toContain('leans to one side');
    await press(panel, 'Put SiR opposite');
    expect(bench.place('SiR')).toEqual(at(-125, 0, 2));
    expect(textOf(panel)).not.toContain('leans to one side');
  });

  it('bounces a pair of heights off the ceiling, and aims it down again', async () => {
    const bench = new PlanBench('5.1.4');
    const panel = await shown(bench, 'TpBR');
    find<HTMLInputElement>(panel, 'input[value=bounced]').click();
    expect(bench.system.bounced).toEqual(['TpBL', 'TpBR']);
    await settle(panel);
    find<HTMLInputElement>(panel, 'input[value=down]').click();
    expect(bench.system.bounced).toEqual([]);
    expect(bench.calls).toEqual(['Bounce TpBR and TpBL', 'Aim TpBR and TpBL down']);
    expect(findAll(await shown(bench, 'FL'), 'input[value=bounced]')).toEqual([]);
  });

  it('lies still while a take runs', async () => {
    const bench = new PlanBench('5.1.2', { places: { TpFL: at(40, 35, 2) } });
    bench.runTake();
    const panel = await shown(bench, 'TpFL');
    const places = ['Angle', 'Elevation', 'Distance'].map((label) => field(panel, label));
    expect(places.map(({ disabled }) => disabled)).toEqual([true, true, true]);
    const buttons = findAll<HTMLButtonElement>(panel, 'button');
    expect(buttons.every(({ disabled }) => disabled)).toBe(true);
    expect(find(panel, 'input[value=bounced]').closest('fieldset')?.disabled).toBe(true);
  });

  it('never shows a number that is none', async () => {
    for (const label of ['FC', 'Sub 1', 'TpFL'] as const) {
      expect(notNumbers(await shown(new PlanBench('5.1.2'), label))).toEqual([]);
    }
  });
});
