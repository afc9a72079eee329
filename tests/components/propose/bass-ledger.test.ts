import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import { alongBar, ledgerStretches } from '../../../components/propose/bass/ledger-bar';
import '../../../components/propose/bass/bass-ledger';
import '../../../components/propose/bass/bass-sheet';
import {
  ledgerFinding,
  remainderText,
  wantsMending,
} from '../../../components/propose/bass/ledger-words';
import { proposeView } from '../../../components/propose/propose-view';
import { ledgerGrid } from '../../../dsp/bass/ledger-curves';
import type { LedgerProposal } from '../../../src/proposal/ledger-proposal';
import type { LedgerLine } from '../../../dsp/bass/bass-ledger';
import { expectClose } from '../../close';
import { layout524 } from '../fixtures';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../mount';
import { sampleSheet } from '../patch/samples';
import { expectQuiet } from '../quiet';
import { benchWithBass } from './proposing-bench';

expectQuiet();

const hz = ledgerGrid();

/** A line whose bass the subs play below 80 Hz and its own speaker above, with a gap. */
function lineWith(gap: readonly [number, number] | null, name = 'SiL'): LedgerLine {
  return {
    name,
    own: hz.map((f) => (f < 80 ? 0.1 : 1)),
    carried: hz.map((f) => (f < 80 ? 1 : 0.1)),
    delivered: hz.map(() => 1.1),
    target: hz.map(() => 1),
    lossDb: gap ? 2 : 0.1,
    leastLossDb: 0.1,
    gaps: gap ? [{ lowHz: gap[0], highHz: gap[1], opens: 'sub low-pass' }] : [],
  };
}

describe('the stretches of a ledger line', () => {
  it('go to the subs below the crossover and to the speaker above, without a hole', () => {
    const stretches = ledgerStretches(lineWith(null), 120);
    expect(stretches.map(({ who }) => who)).toEqual(['carried', 'own']);
    expect([stretches[0]?.lowHz, stretches[1]?.highHz]).toEqual([hz[0], hz.at(-1)]);
    // The hand-over lies between two points of the grid, 1/24 octave apart.
    expectClose(stretches[0]?.highHz ?? 0, 80, 2.4);
    expect(stretches[0]?.highHz).toBe(stretches[1]?.lowHz);
  });

  it('go to nobody in a gap', () => {
    const stretches = ledgerStretches(lineWith([100, 140]), 120);
    expect(stretches.map(({ who }) => who)).toEqual(['carried', 'own', 'nobody', 'own']);
    expectClose(stretches[2]?.lowHz ?? 0, 100, 3);
    expectClose(stretches[2]?.highHz ?? 0, 140, 4.2);
  });

  it('end where LFE ends', () => {
    const lfe = { ...lineWith(null, 'LFE'), own: hz.map(() => 0), carried: hz.map(() => 1) };
    const stretches = ledgerStretches(lfe, 120);
    expect(stretches.map(({ who }) => who)).toEqual(['carried', 'none']);
    expectClose(stretches[0]?.highHz ?? 0, 120, 3.6);
  });

  it('stand along the bar by octaves: √(20·300) in its middle', () => {
    expectClose([alongBar(20), alongBar(Math.sqrt(6000)), alongBar(300)], [0, 0.5, 1], 0.01);
    expect([alongBar(5), alongBar(900)]).toEqual([0, 1]);
  });
});

describe('a loss', () => {
  it('wants mending when a setting opens a gap, not when the room ends there', () => {
    expect(wantsMending(lineWith([100, 140]))).toBe(true);
    expect(wantsMending({ lossDb: 0.4, gaps: [{ opens: 'low cut' }] })).toBe(false);
    expect(wantsMending({ lossDb: 3, gaps: [{ opens: null }] })).toBe(false);
    expect(wantsMending({ lossDb: 3, gaps: [], mends: [1] })).toBe(true);
  });
});

describe('what the ledger found', () => {
  const ledger = (lossDb: number, mendable = false): LedgerProposal => ({
    unknown: [],
    lines: [
      {
        channel: 'SiL',
        carrier: 'subs',
        lossDb,
        leastLossDb: 0,
        gaps: mendable ? [{ lowHz: 100, highHz: 140, opens: 'sub low-pass' }] : [],
        why: null,
        mends: [],
      },
    ],
  });

  it('is nothing only where the column of losses shows nothing', () => {
    expect(ledgerFinding(ledger(0.04))).toBe('No bass is lost on the way');
    expect(ledgerFinding(ledger(0.6))).toBe('No setting would bring back the bass that is missing');
    expect(plain(remainderText(ledger(0.6)))).toContain('Up to 0.6 dB');
    expect(plain(ledgerFinding(ledger(0.4, true)))).toContain('more than 0.5 dB that a setting');
    expect(remainderText(ledger(0.4, true))).toBe('');
    expect(ledgerFinding(ledger(0.6, true))).toBe('SiL loses bass on the way');
  });
});

describe('the bass ledger', () => {
  it('gives every channel a line in words and marks what is lost', async () => {
    const ledger = await mount(
      'll-bass-ledger',
      { lines: [lineWith([100, 140]), lineWith(null, 'LFE')], layout: layout524, unknown: ['FC'] },
      600,
    );
    expect(textOf(find(ledger, 'tr[data-line=SiL]'))).toMatch(
      /20 to 7\d Hz: the subs, .*: nobody, .*its own speaker 2\.0 dB$/,
    );
    const loss = find(ledger, 'tr[data-line=SiL] td.loss');
    expect(loss.classList.contains('signal')).toBe(true);
    expect(textOf(ledger)).toContain('no roll-off is known');
    const bars = findAll(ledger, 'tr[data-line=SiL] .bar span');
    const width = find(ledger, 'tr[data-line=SiL] .bar').getBoundingClientRect().width;
    const covered = bars.reduce((sum, one) => sum + one.getBoundingClientRect().width, 0);
    expectClose(covered, width, 0.5);
  });

  it('lets no tick overlap another at any width', async () => {
    for (const width of [300, 358, 420, 700, 1060]) {
      const ledger = await mount(
        'll-bass-ledger',
        { lines: [lineWith(null)], layout: layout524 },
        width,
      );
      const boxes = findAll(ledger, '.axis span')
        .map((one) => one.getBoundingClientRect())
        .filter((box) => box.width > 0);
      expect(boxes.length).toBeGreaterThan(3);
      for (const [n, box] of boxes.slice(1).entries()) {
        expect(box.left).toBeGreaterThan(boxes[n]?.right ?? 0);
      }
      expect(ledger.scrollWidth).toBeLessThanOrEqual(width);
    }
  });
});

describe('the Bass sheet', () => {
  it('says which setting opens a gap and mends it with one click', async () => {
    const processor = await sampleSheet(16);
    const free = {
      ...processor,
      subLowPass: { ...processor.subLowPass, notBelowHighestBedCrossover: false },
    };
    const lowest = Math.min(...free.subLowPass.stepsHz);
    const bench = benchWithBass(layout524, 1, {
      sheet: free,
      choices: {
        fullRange: [],
        bassPreferenceDb: 0,
        subLowPassHz: lowest,
        lowCutHz: null,
        subsLaterSeconds: 0,
        subsTurned: false,
        equaliserBands: 0,
      },
      chosenCrossoverHz: { 'front heights': 200 },
    });
    const view = () => proposeView(bench, bench.state, null);
    const sheet = await mount('ll-bass-sheet', { bench, view: view() }, 1060);
    bench.subscribe(() => Object.assign(sheet, { view: view() }));
    const lossOf = (label: string) =>
      bench.state.proposal?.ledger.own?.lines.find(({ channel }) => channel === label)?.lossDb ?? 0;
    const before = lossOf('TpFL');
    expect(before).toBeGreaterThan(1);
    expect(findAll(sheet, 'tr[data-line=TpFL] .nobody').length).toBeGreaterThan(0);
    const mends = find(sheet, 'll-ledger-mends');
    expect(textOf(mends)).toContain('TpF');
    const button = findAll<HTMLButtonElement>(mends, '.buttons button')[0];
    button?.focus();
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.calls).toEqual(['Mend the bass ledger']);
    expect(lossOf('TpFL')).toBeLessThan(before - 0.2);
    expect(notNumbers(sheet)).toEqual([]);
  });

  it('has a line for LFE, and for every channel of the plan', async () => {
    const bench = benchWithBass(layout524);
    const view = proposeView(bench, bench.state, null);
    const sheet = await mount('ll-bass-sheet', { bench, view }, 700);
    const names = findAll(sheet, 'tr[data-line] th').map((one) => plain(one.textContent ?? ''));
    const mains = layout524.channels.filter(({ kind }) => kind !== 'sub');
    expect(names.toSorted()).toEqual([...mains.map(({ label }) => label), 'LFE'].toSorted());
  });
});
