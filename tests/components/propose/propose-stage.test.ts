import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import type { ProposeStage } from '../../../components/propose/propose-stage';
import '../../../components/propose/propose-stage';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import type { Layout } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { inventedBass, inventedRolloff, inventedTogether } from '../../src/reading/told-together';
import { benchWith } from '../bench-of';
import { FakeBench, layoutOf } from '../fake-bench';
import { emptyReading, inventedReadings, layout19, layout524, layoutOne } from '../fixtures';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { sampleTake } from '../sample-session';

expectQuiet();

async function proposing(bench: FakeBench, width = 1100): Promise<ProposeStage> {
  const stage = await mount('ll-propose', { bench }, width);
  stage.addEventListener('ll-select', (event) => (stage.selected = event.detail));
  return stage as ProposeStage;
}

const bench524 = () => benchWith(layout524, inventedReadings(layout524));
const title = (stage: Element) => plain(find(stage, 'h1').textContent ?? '');
const rowOf = (stage: Element, label: string) =>
  findAll(stage, `tr[data-channel="${label}"] > *`).map((cell) => plain(cell.textContent ?? ''));

function radio(stage: Element, hz: number): HTMLInputElement {
  const label = findAll(find(stage, 'll-crossover-steps'), 'label').find((one) =>
    plain(one.textContent ?? '').startsWith(`${hz} Hz`),
  );
  const input = label?.querySelector('input');
  if (!input) throw new RangeError(`no step ${hz}`);
  return input;
}

describe('the Propose stage without readings', () => {
  it('says what is missing and leads to Probe', async () => {
    const stage = await mount('ll-propose', { bench: new FakeBench() });
    const wanted: string[] = [];
    stage.addEventListener('ll-go', (event) => wanted.push(event.detail));
    expect(title(stage)).toBe('No settings yet');
    await userEvent.click(find(stage, 'button.go'));
    expect(wanted).toEqual(['probe']);
  });

  it('does not propose from readings of another plan', async () => {
    const bench = bench524();
    bench.set({ layout: layoutOf('5.1') });
    const stage = await proposing(bench);
    expect(title(stage)).toBe('The last take was of 5.2.4');
    expect(findAll(stage, 'table')).toEqual([]);
  });

  it('waits for what is read together before it shows a setting', async () => {
    const bench = bench524();
    const take = sampleTake('5.2.4');
    const channels = layout524.channels.map(({ label }) => ({
      ...emptyReading(label),
      faults: [],
      bassBands: inventedBass(),
    }));
    const readings = { ...inventedReadings(layout524), channels };
    const document = { ...bench.state.document, takes: [{ ...take, readings }] };
    bench.set({ document, readings, proposal: null });
    const stage = await proposing(bench);
    expect(title(stage)).toBe('Roll-offs are being read together');
    expect(findAll(stage, 'table')).toEqual([]);
  });
});

describe('the Propose stage', () => {
  it('states the finding for the group of the selected speaker', async () => {
    const stage = await proposing(bench524());
    expect(title(stage)).toMatch(/^Fronts cross over at \d+ Hz$/);
    stage.selected = 'SiR';
    await settle(stage);
    expect(title(stage)).toMatch(/^Surrounds cross over at \d+ Hz$/);
    expect(textOf(find(stage, 'll-why-crossover'))).toMatch(/Why \d+ Hz/);
    expect(find(stage, 'path.curve.lead').getAttribute('data-channel')).toBe('SiR');
    expect(find(stage, 'path.curve.partner').getAttribute('data-channel')).toBe('SiL');
  });

  it('proposes from what was read together, and draws and says so', async () => {
    const readings = inventedReadings(layout524);
    const together = [inventedTogether(['FL', 'FR'], inventedRolloff(88))];
    const bench = bench524();
    const { processor } = bench.state.document;
    const proposal = proposeSettings(readings, layout524, processor, { together });
    if (isTrouble(proposal)) throw new RangeError(proposal.sentence);
    bench.set({ together, proposal });
    const stage = await proposing(bench);
    // 1.25 · 0.76 · 88 · 1.05 = 87.8.
    expect(title(stage)).toBe('Fronts cross over at 90 Hz');
    expect(textOf(find(stage, '.lede'))).toContain(
      'FL and FR share one setting and are one model, read from 3 seats and 2 speakers.',
    );
    const why = textOf(find(stage, 'll-why-crossover'));
    expect(why).toContain('are 6 dB down at 67 Hz, read from 3 seats and 2 speakers');
    expect(why).toMatch(/FL alone is 6 dB down .* say that it is another model/);
    expect(notNumbers(stage)).toEqual([]);
  });

  it('shows another group on demand, its deciding speaker in front', async () => {
    const bench = bench524();
    const stage = await proposing(bench);
    const choices = findAll<HTMLInputElement>(find(stage, 'll-choice'), 'input');
    choices[1]?.click();
    await settle(stage);
    expect(stage.selected).toBe('FC');
    expect(title(stage)).toMatch(/^The centre crosses over at/);
  });

  it('sets another crossover, says its price, and takes it back', async () => {
    const bench = bench524();
    const stage = await proposing(bench);
    stage.selected = 'SiL';
    await settle(stage);
    const proposed = bench.state.proposal?.groups.find(({ group }) => group === 'sides');
    const proposedHz = proposed?.crossoverHz ?? 0;
    radio(stage, 60).click();
    await settle(stage);
    expect(bench.state.document.chosenCrossoverHz).toEqual({ sides: 60 });
    expect(bench.calls).toEqual(['Choose crossover']);
    expect(title(stage)).toBe(`Surrounds are set to 60 Hz; ${proposedHz} Hz is proposed`);
    expect(textOf(find(stage, '.price'))).toMatch(/At 60 Hz SiL is \d+\.\d dB down by itself/);
    expect(rowOf(stage, 'SiR')[3]).toBe('60 Hzset by you');
    expect(findAll(stage, 'line.proposed')).toHaveLength(1);
    await userEvent.click(find(stage, '.price button'));
    await settle(stage);
    expect(bench.state.document.chosenCrossoverHz).toEqual({});
    expect(findAll(stage, '.price')).toEqual([]);
  });

  it('keeps nothing when the proposed step is chosen', async () => {
    const bench = bench524();
    bench.set({
      document: { ...bench.state.document, chosenCrossoverHz: { sides: 60, fronts: 80 } },
    });
    const stage = await proposing(bench);
    stage.selected = 'SiL';
    await settle(stage);
    const { crossoverHz } =
      bench.state.proposal?.groups.find(({ group }) => group === 'sides') ?? {};
    radio(stage, crossoverHz ?? 0).click();
    expect(bench.state.document.chosenCrossoverHz).toEqual({ fronts: 80 });
  });

  it('types every setting with its unit, and opens each line to its reasons', async () => {
    const bench = bench524();
    const stage = await proposing(bench);
    const [speaker, distance, level, crossover, polarity] = rowOf(stage, 'SiL');
    expect(speaker).toContain('SiL');
    expect(distance).toMatch(/^\d\.\d\d m$/);
    expect(level).toMatch(/^([+−]\d+\.\d|0\.0) dB$/);
    expect(crossover).toMatch(/^\d+ Hz$/);
    expect(polarity).toBe('normal');
    const button = find(stage, 'tr[data-channel="SiL"] button');
    expect(button.getAttribute('aria-expanded')).toBe('false');
    button.focus();
    await userEvent.keyboard('{Enter}');
    await settle(stage);
    expect(button.getAttribute('aria-expanded')).toBe('true');
    const why = find<HTMLTableRowElement>(stage, '#why-SiL');
    expect(why.hidden).toBe(false);
    const channel = bench.state.proposal?.channels.find((one) => one.channel === 'SiL');
    expect(plain(why.textContent)).toContain(plain(channel?.distanceReason ?? 'none'));
    expect(plain(why.textContent)).toContain(plain(channel?.levelReason ?? 'none'));
    expect(stage.selected).toBe('SiL');
  });

  it('says "cannot tell" where it cannot', async () => {
    const stage = await proposing(bench524());
    expect(rowOf(stage, 'Sub 1')[1]).toBe('cannot tell');
    expect(rowOf(stage, 'Sub 1')[3]).toBe('–');
    expect(rowOf(stage, 'Sub 1')[4]).toBe('cannot tell');
  });

  it('says how deep the subs reach, without a crossover to choose', async () => {
    const stage = await proposing(bench524());
    stage.selected = 'Sub 2';
    await settle(stage);
    expect(title(stage)).toMatch(/^The subs reach down to \d+(\.\d)? Hz$/);
    expect(findAll(stage, 'll-why-crossover')).toEqual([]);
    expect(findAll(stage, 'line.crossover')).toEqual([]);
  });

  it('runs full range where there is no sub', async () => {
    const layout = layoutOf('2.0');
    const stage = await proposing(benchWith(layout, inventedReadings(layout)));
    expect(title(stage)).toBe('Fronts run full range: there is no sub');
    expect(rowOf(stage, 'FL')[3]).toBe('full range');
    expect(findAll(stage, 'll-crossover-steps')).toEqual([]);
  });

  it('marks what is simulated', async () => {
    const stage = await proposing(bench524());
    const heads = findAll(stage, 'h2').map((one) => plain(one.textContent ?? ''));
    expect(heads.filter((text) => text.includes('(simulated)'))).toHaveLength(2);
  });

  const cases: readonly (readonly [string, Layout])[] = [
    ['one speaker', layoutOne],
    ['eleven speakers', layout524],
    ['nineteen speakers', layout19],
  ];
  for (const [name, layout] of cases) {
    it(`shows ${name}, with and without numbers, at every width`, async () => {
      const whole = inventedReadings(layout);
      const empty = { ...whole, channels: layout.channels.map(({ label }) => emptyReading(label)) };
      for (const readings of [whole, empty]) {
        for (const width of [366, 720, 1080]) {
          const stage = await proposing(benchWith(layout, readings), width);
          expect(notNumbers(stage)).toEqual([]);
          expect(stage.scrollWidth).toBeLessThanOrEqual(width);
          expect(findAll(stage, 'tr[data-channel]')).toHaveLength(layout.channels.length);
        }
      }
    });
  }
});
