import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import type { ProposeStage } from '../../../components/propose/propose-stage';
import '../../../components/propose/propose-stage';
import { proposeSheetOrder } from '../../../components/propose/propose-sheets';
import type { Layout } from '../../../src/system/channel';
import { benchWith } from '../bench-of';
import { FakeBench, layoutOf } from '../fake-bench';
import { emptyReading, inventedReadings, layout19, layout524, layoutOne } from '../fixtures';
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
import { expectQuiet } from '../quiet';
import { benchWithBass, ProposingBench } from './proposing-bench';

expectQuiet();
afterEach(() => {
  sessionStorage.clear();
  location.hash = '';
});

async function proposing(bench: FakeBench, width = 1100, sheet = ''): Promise<ProposeStage> {
  location.hash = `propose/${sheet}`;
  const stage = await mount('ll-propose', { bench }, width);
  stage.addEventListener('ll-select', (event) => (stage.selected = event.detail));
  return stage as ProposeStage;
}

const title = (stage: Element) => plain(find(stage, 'h1').textContent ?? '');

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
    const bench = benchWith(layout524, inventedReadings(layout524));
    bench.set({ layout: layoutOf('5.1') });
    const stage = await proposing(bench);
    expect(title(stage)).toBe('The last take was of 5.2.4');
    expect(findAll(stage, 'table')).toEqual([]);
  });
});

describe('the Propose stage', () => {
  it('begins with the crossovers and leads from sheet to sheet by address', async () => {
    const stage = await proposing(benchWithBass(layout524));
    const links = findAll<HTMLAnchorElement>(stage, 'nav a');
    expect(links.map((one) => plain(one.textContent ?? ''))).toEqual([
      'Crossovers',
      'Subs',
      'Bass',
      'Compare',
      'List',
      'Equaliser',
    ]);
    expect(findAll(stage, 'll-crossovers-sheet')).toHaveLength(1);
    links[4]?.focus();
    await userEvent.keyboard('{Enter}');
    await settle(stage);
    expect(location.hash).toBe('#propose/list');
    expect(findAll(stage, 'll-list-sheet')).toHaveLength(1);
  });

  it('keeps the whole proposal in sight while the sums of a newer one are worked out', async () => {
    const bench = benchWithBass(layout524);
    const stage = await proposing(bench, 1100, 'subs');
    const said = title(stage);
    expect(said).toMatch(/^The subs lose \d+\.\d dB with FL and FR/);
    const { proposal } = bench.state;
    if (!proposal?.subs) throw new RangeError('no subs are proposed');
    const coming = { ...proposal, sums: 'coming' as const };
    bench.set({ proposal: { ...coming, subs: { ...proposal.subs, alignment: null } } });
    await settle(stage);
    expect(title(stage)).toBe(said);
  });

  it('names what could not be proposed and what would settle it', async () => {
    const stage = await proposing(benchWithBass(layout524));
    expect(findAll(stage, '.missing')).toEqual([]);
    const bare = await proposing(new ProposingBench(layout524, inventedReadings(layout524)));
    expect(textOf(find(bare, '.missing'))).toMatch(/could not be proposed/);
  });

  const cases: readonly (readonly [string, Layout])[] = [
    ['one speaker', layoutOne],
    ['no sub', layoutOf('5.0')],
    ['eleven speakers', layout524],
    ['nineteen speakers', layout19],
  ];
  for (const [name, layout] of cases) {
    for (const sheet of proposeSheetOrder) {
      it(`shows ${sheet} of ${name}, with and without numbers, at every width`, async () => {
        const whole = inventedReadings(layout);
        const channels = layout.channels.map(({ label }) => emptyReading(label));
        const benches = [
          benchWithBass(layout, 2),
          new ProposingBench(layout, whole),
          new ProposingBench(layout, { ...whole, channels }),
        ];
        for (const bench of benches) {
          for (const width of [358, 700, 1060]) {
            const stage = await proposing(bench, width, sheet);
            expect(notNumbers(stage)).toEqual([]);
            expect(stage.scrollWidth).toBeLessThanOrEqual(width);
            expect(overlappingTexts(stage)).toEqual([]);
            stage.remove();
          }
        }
      });
    }
  }
});
