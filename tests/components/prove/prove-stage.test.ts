import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/prove/prove-stage';
import { sayChange } from '../../../components/prove/change-words';
import type { SettingChange } from '../../../src/proof/proof';
import type { Proposal } from '../../../src/proposal/proposal';
import { wantedSettings } from '../../../src/session/derive-proof';
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
import { button } from '../patch/samples';
import { expectQuiet } from '../quiet';
import { benchWithProof, toldProof } from './proof-bench';

expectQuiet();
beforeEach(() => {
  location.hash = '#prove/proof';
});

const title = (stage: Element): string => plain(find(stage, 'h1').textContent ?? '');

/** A bench whose settings are worked out to their end. */
function proposed(layout = layout524): { bench: FakeBench; proposal: Proposal } {
  const bench = benchWith(layout, inventedReadings(layout));
  const { proposal } = bench.state;
  if (!proposal) throw new RangeError('nothing is proposed');
  const whole: Proposal = { ...proposal, sums: 'there' };
  bench.set({ proposal: whole });
  return { bench, proposal: whole };
}

describe('Prove before anything is proved', () => {
  it('leads to Probe while there are no settings', async () => {
    const stage = await mount('ll-prove', { bench: new FakeBench() });
    expect(title(stage)).toBe('Nothing is proved yet: there are no settings to prove');
    expect(findAll(stage, 'a.go').map((link) => link.getAttribute('href'))).toEqual([
      '#probe/take',
    ]);
  });

  it('says what the settings wait for once a take is read', async () => {
    const { bench } = proposed();
    bench.set({ proposal: null });
    const stage = await mount('ll-prove', { bench });
    expect(title(stage)).toBe('The settings cannot be worked out');
    expect(textOf(find(stage, 'll-proof-start'))).toContain('Run the take again under Probe');
  });

  it('says what is typed, what must hold and what to mind, and starts', async () => {
    const { bench } = proposed();
    const stage = await mount('ll-prove', { bench }, 700);
    expect(title(stage)).toBe('Nothing is proved yet: the settings have only been proposed');
    const said = textOf(stage);
    expect(said).toContain('leave the room or protect your ears');
    expect(said).toContain('within 0.5 dB and one level step');
    await userEvent.click(button(stage, 'Prove'));
    expect(bench.calls).toEqual(['startProof ']);
  });

  it('waits while the settings are still being worked out', async () => {
    const { bench, proposal } = proposed();
    bench.set({ proposal: { ...proposal, sums: 'coming' } });
    const stage = await mount('ll-prove', { bench });
    expect(button(stage, 'Prove').disabled).toBe(true);
    expect(textOf(stage)).toContain('still being worked out');
  });

  it('hands over files where the sound is recorded elsewhere', async () => {
    const { bench } = proposed();
    bench.setRig('recording');
    const stage = await mount('ll-prove', { bench });
    expect(textOf(stage)).toContain('Through the processor, with everything typed');
  });

  it('shows how far the take has come, and stops it', async () => {
    const { bench } = proposed();
    bench.set({
      activity: {
        kind: 'reading',
        progress: 0.4,
        secondsLeft: 3,
        channels: [],
      },
    });
    const stage = await mount('ll-prove', { bench });
    expect(textOf(stage)).toContain('40 %');
    await userEvent.click(button(stage, 'Stop reading'));
    expect(bench.calls).toEqual(['stop']);
  });
});

describe('what was played through the processor', () => {
  it('is being judged for a moment, and nothing can be pressed meanwhile', async () => {
    const bench = benchWithProof({});
    const { proof, layout, document } = bench.state;
    if (!proof) throw new RangeError('nothing is proved');
    const { id, typed, readings, before, toRepeat } = proof;
    const steps = document.processor;
    bench.set({ proof: null, proving: { id, layout, steps, typed, readings, before, toRepeat } });
    const stage = await mount('ll-prove', { bench });
    expect(title(stage)).toBe('What was played through the processor is being judged');
    expect(findAll(stage, 'll-proof-sheet button')).toEqual([]);
    bench.set({ proof });
    await settle(stage);
    expect(title(stage)).toBe(`All ${proof.lines.length} lines hold`);
  });
});

describe('a proof in which all holds', () => {
  it('says so with its count, and lists what holds', async () => {
    const bench = benchWithProof({});
    const stage = await mount('ll-prove', { bench });
    const all = bench.state.proof?.lines.length ?? 0;
    expect(title(stage)).toBe(`All ${all} lines hold`);
    expect(findAll(stage, 'li.pass')).toHaveLength(all);
    expect(findAll(stage, 'li.fail')).toEqual([]);
    expect(find<HTMLDetailsElement>(stage, 'details').open).toBe(true);
  });
});

describe('a proof in which something fails', () => {
  const swapped = { distanceMetres: { FL: 2.6, FR: 2.4 } };

  it('counts, names the mistake, and puts failed lines first', async () => {
    const bench = benchWithProof(swapped);
    const stage = await mount('ll-prove', { bench });
    expect(title(stage)).toMatch(/^\d+ of \d+ lines fail, \d+ hold/);
    expect(textOf(find(stage, '.lede'))).toContain(
      'Distances seem to be typed for the wrong side: FL and FR.',
    );
    const verdicts = findAll(stage, 'li[data-line]').map((line) => line.className);
    const order = ['fail', 'untold', 'pass'];
    expect(verdicts).toEqual(verdicts.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(find<HTMLDetailsElement>(stage, 'details').open).toBe(false);
  });

  it('says what to change, and shows that setting', async () => {
    const bench = benchWithProof({ trimDb: { FR: -2 } });
    const stage = await mount('ll-prove', { bench });
    const picked: unknown[] = [];
    stage.addEventListener('ll-select', (event) => picked.push(event.detail));
    const line = find(stage, '[data-line="level FR"]');
    expect(textOf(line)).toContain('Level trim of FR: +2.0 dB; it seems to be −2.0 dB.');
    const link = find<HTMLAnchorElement>(line, 'a');
    expect(link.getAttribute('href')).toBe('#propose/list/level%20FR');
    link.click();
    expect(picked).toEqual(['FR']);
  });

  it('proves one line again by its channels alone', async () => {
    const bench = benchWithProof({ trimDb: { FR: -2 } });
    const stage = await mount('ll-prove', { bench });
    await userEvent.click(button(find(stage, '[data-line="level FR"]'), 'Prove this again'));
    expect(bench.calls).toEqual(['startProof FR']);
  });

  it('says distances in the unit of the processor', () => {
    // 3.048 m are ten feet.
    const change: SettingChange = {
      setting: 'distance',
      channels: ['FL'],
      group: null,
      from: 6.096,
      to: 3.048,
      unit: 'm',
    };
    const said = (unit: 'm' | 'ft') => sayChange(change, layout524, unit);
    expect(said('m')).toBe('Distance of FL: 3.05\u202fm; it seems to be 6.10\u202fm.');
    expect(said('ft')).toBe('Distance of FL: 10.0\u202fft; it seems to be 20.0\u202fft.');
  });

  it('says what would settle what cannot be told', async () => {
    const bench = benchWithProof({ half: 1e-3 });
    const stage = await mount('ll-prove', { bench });
    const untold = findAll(stage, 'li.untold');
    expect(untold.length).toBe(bench.state.proof?.counts['cannot tell']);
    expect(untold.length).toBeGreaterThan(0);
    for (const line of untold) expect(line.querySelectorAll('p.small').length).toBeGreaterThan(0);
  });

  it('offers to repeat what came out damaged', async () => {
    const bench = benchWithProof({});
    bench.set({ proof: toldProof({}, { toRepeat: ['FC'] }) });
    const stage = await mount('ll-prove', { bench });
    await userEvent.click(button(stage, 'Repeat FC'));
    expect(bench.calls).toEqual(['startProof FC']);
  });

  it('says when the settings have changed since', async () => {
    const { bench, proposal } = proposed();
    const typed = wantedSettings(proposal, bench.state.document);
    const fresh = toldProof({}, { typed });
    bench.set({ proof: fresh });
    const stage = await mount('ll-prove', { bench });
    expect(title(stage)).toMatch(/^All/);
    bench.set({ proof: { ...fresh, typed: { ...typed, subLowPassHz: 35 } } });
    await settle(stage);
    expect(title(stage)).toBe('What was proved is no longer what is proposed');
  });
});

describe('before and after', () => {
  it('stand on one chart, of the failed speaker first, of any on demand', async () => {
    const bench = benchWithProof({ trimDb: { FR: -2 } });
    const stage = await mount('ll-prove', { bench }, 1060);
    const chart = find(stage, 'll-before-after');
    expect(textOf(find(chart, 'h2'))).toBe(
      'FR before its settings and through the processor (simulated)',
    );
    expect(findAll(chart, 'path.trace[stroke]').length).toBeGreaterThanOrEqual(2);
    stage.selected = 'FC';
    await settle(stage);
    expect(textOf(find(chart, 'h2'))).toContain('FC before');
  });
});

describe('Prove at any width', () => {
  for (const width of [358, 700, 1060]) {
    it(`stays inside ${width} px, with nothing on top of another`, async () => {
      const bench = benchWithProof({ trimDb: { FR: -2 }, distanceMetres: { FC: 7.22 } });
      const stage = await mount('ll-prove', { bench }, width);
      expect(overlappingTexts(stage)).toEqual([]);
      expect(notNumbers(stage)).toEqual([]);
      expect(stage.scrollWidth).toBeLessThanOrEqual(width);
    });
  }

  it('holds what is to be typed for nineteen speakers', async () => {
    const { bench } = proposed(layout19);
    const stage = await mount('ll-prove', { bench }, 358);
    expect(notNumbers(stage)).toEqual([]);
    expect(stage.scrollWidth).toBeLessThanOrEqual(358);
  });
});
