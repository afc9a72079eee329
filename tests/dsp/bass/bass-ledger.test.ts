import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bassLedger, type LedgerSettings } from '../../../dsp/bass/bass-ledger';
import { curveOfFilter, curveOfLevels, ledgerGrid } from '../../../dsp/bass/ledger-curves';
import type { FilterSpec } from '../../../dsp/filter/analogue';
import {
  sealedResponse,
  ventedResponse,
  type HighPassResponse,
} from '../../../dsp/rolloff/box-response';
import { expectClose } from '../../close';

const hz = ledgerGrid();
const flat = hz.map(() => 1);

/** Power of a box model's response. */
const curveOfBox = (response: HighPassResponse): Float64Array =>
  hz.map((f) => response(f).re ** 2 + response(f).im ** 2);

const lowPass = (cutoffHz: number): FilterSpec => ({
  family: 'linkwitz-riley',
  kind: 'low-pass',
  order: 4,
  cutoffHz,
});

const base: LedgerSettings = {
  channels: [],
  subs: [flat],
  fronts: [],
  highPass: { family: 'linkwitz-riley', order: 4 },
  lowPass: { family: 'linkwitz-riley', order: 4 },
  subLowPass: null,
  lowCut: null,
  lfeLowPass: lowPass(120),
  copiedBelowHz: null,
};

function lineOf(
  speaker: Float64Array | null,
  crossoverHz: number | null,
  settings: Partial<LedgerSettings> = {},
) {
  const channels = [{ name: 'one', speaker, crossoverHz }];
  const [line] = bassLedger({ ...base, ...settings, channels });
  if (!line) throw new Error('a channel has a line');
  return line;
}

/** A closed box that is 6 dB down at `f6`: |H|² of Q = 1/√2 is w⁴/(1 + w⁴). */
const box = (f6: number) => curveOfBox(sealedResponse(f6 * 3 ** 0.25, Math.SQRT1_2));

describe('bassLedger', () => {
  it('of a flat speaker at full range is all its own', () => {
    const line = lineOf(flat, null);
    expectClose(line.own, flat, 0);
    expectClose(
      line.carried,
      flat.map(() => 0),
      0,
    );
    expect(line).toMatchObject({ lossDb: 0, leastLossDb: 0, gaps: [] });
  });

  it('of a Linkwitz-Riley-4 crossover between flat sides adds powers: (1 + w⁸)/(1 + w⁴)²', () => {
    const line = lineOf(flat, 80);
    expectClose(
      line.delivered,
      hz.map((f) => (1 + (f / 80) ** 8) / (1 + (f / 80) ** 4) ** 2),
      1e-12,
    );
    expectClose(line.lossDb, 0, 1e-9);
    expect(line.gaps).toEqual([]);
  });

  it('weighs loss as pink noise: half of the octaves silent are 3 dB', () => {
    const middle = Math.sqrt(20 * 300);
    const line = lineOf(
      hz.map((f) => (f < middle ? 0 : 1)),
      null,
      { subs: [] },
    );
    expectClose(line.lossDb, 10 * Math.log10(2), 0.06, 'the edge lies between frequencies');
    expectClose(line.leastLossDb, line.lossDb, 0);
    expectClose([line.gaps[0]?.lowHz, line.gaps[0]?.highHz], [20, middle], 2);
    expect(line.gaps[0]?.opens).toBeNull();
  });

  it('names the sub low-pass below the crossover', () => {
    const line = lineOf(flat, 120, { subLowPass: lowPass(50) });
    expect(line.gaps).toHaveLength(1);
    expect(line.gaps[0]?.opens).toBe('sub low-pass');
    expect(line.gaps[0]?.lowHz).toBeGreaterThan(45);
    expect(line.gaps[0]?.highHz).toBeLessThan(125);
    expect(lineOf(flat, 120, { subLowPass: lowPass(250) }).gaps).toEqual([]);
  });

  it('names a crossover too low for its speaker, and one too high for the sub', () => {
    const low = lineOf(box(120), 40);
    expect(low.gaps.map(({ opens }) => opens)).toEqual(['crossover too low']);
    const short = curveOfFilter(lowPass(60));
    const high = lineOf(flat, 200, { subs: [short] });
    expect(high.gaps.map(({ opens }) => opens)).toEqual(['crossover too high']);
  });

  it('names a low cut that takes the bottom away', () => {
    const lowCut = { family: 'butterworth', kind: 'high-pass', order: 4, cutoffHz: 40 } as const;
    const line = lineOf(flat, 80, { lowCut });
    expect(line.gaps.map(({ opens }) => opens)).toEqual(['low cut']);
    expectClose(line.gaps[0]?.highHz, 40 * 3 ** (-1 / 8), 1.2, 'the step of the grid');
  });

  it('names full range for a speaker without bass, and closes the gap by copying to the sub', () => {
    const line = lineOf(box(80), null);
    expect(line.gaps.map(({ opens }) => opens)).toEqual(['full range']);
    expect(lineOf(box(80), null, { copiedBelowHz: 120 }).gaps).toEqual([]);
  });

  it('says that nobody plays what lies below sub and speaker', () => {
    const sub = curveOfBox(ventedResponse(32, 0));
    const line = lineOf(box(60), 80, { subs: [sub] });
    expect(line.gaps).toHaveLength(1);
    expect(line.gaps[0]).toMatchObject({ lowHz: 20, opens: null });
    expect(line.lossDb).toBeGreaterThan(line.leastLossDb);
    expectClose(line.leastLossDb, line.lossDb, 1, 'the speaker is weak about its crossover');
  });

  it('without subs sends bass to the fronts that carry it, or to nobody', () => {
    const carried = lineOf(box(90), 110, { subs: [], fronts: [flat, flat] });
    expect(carried.gaps).toEqual([]);
    const lost = lineOf(flat, 110, { subs: [] });
    expect(lost.gaps.map(({ opens }) => opens)).toEqual(['crossover too high']);
    // The fronts themselves play full range and carry nothing a second time.
    expectClose(lineOf(flat, null, { subs: [], fronts: [flat] }).delivered, flat, 0);
  });

  it('of LFE holds the subs against its own low-pass', () => {
    const line = lineOf(null, null);
    expect(line).toMatchObject({ lossDb: 0, gaps: [] });
    const cut = lineOf(null, null, { subLowPass: lowPass(60) });
    expect(cut.gaps.map(({ opens }) => opens)).toEqual(['sub low-pass']);
    expect(cut.gaps[0]?.highHz).toBeLessThanOrEqual(120);
    const nowhere = lineOf(null, null, { subs: [] });
    expectClose(nowhere.lossDb, 300, 1e-6);
  });

  it('loses no less with a filter more, and never less than with none', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.constantFrom(40, 80, 120, 200),
        fc.double({ min: 20, max: 300, noNaN: true }),
        (f6, crossoverHz, cutoffHz) => {
          const speaker = box(f6);
          const without = lineOf(speaker, crossoverHz);
          const cut = lineOf(speaker, crossoverHz, { subLowPass: lowPass(cutoffHz) });
          expect(cut.lossDb).toBeGreaterThanOrEqual(without.lossDb - 1e-9);
          expect(cut.lossDb).toBeGreaterThanOrEqual(cut.leastLossDb - 1e-9);
        },
      ),
      { seed: 4 },
    );
  });

  it('refuses curves on another grid, and what is no power', () => {
    expect(() => lineOf(new Float64Array(3), null)).toThrow(RangeError);
    expect(() => lineOf(flat, null, { subs: [flat.map(() => NaN)] })).toThrow(RangeError);
    expect(() => lineOf(flat, null, { fronts: [flat.map(() => -1)] })).toThrow(RangeError);
    expect(() => lineOf(flat, 0)).toThrow(RangeError);
  });
});

describe('curveOfLevels', () => {
  it('runs straight in dB over log f, level beyond the ends', () => {
    const curve = curveOfLevels(new Float64Array([40, 80, 160]), new Float64Array([-12, 0, 3]));
    const at = (f: number): number => {
      const k = hz.findIndex((one) => one >= f - 1e-6);
      return 10 * Math.log10(curve[k] ?? 0);
    };
    expectClose([at(20), at(40), at(80), at(160), at(290)], [-12, -12, 0, 3, 3], 1e-9);
    const k = hz.findIndex((f) => f >= 55);
    expectClose(10 * Math.log10(curve[k] ?? 0), -12 + 12 * Math.log2((hz[k] ?? 0) / 40), 1e-9);
  });

  it('refuses lengths that differ', () => {
    expect(() => curveOfLevels(new Float64Array([40, 80]), new Float64Array(3))).toThrow(
      RangeError,
    );
  });
});
