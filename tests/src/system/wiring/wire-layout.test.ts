import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChannelLabel, Layout } from '../../../../src/system/channel';
import { layoutChoices } from '../../../../src/system/layout';
import type { ProcessorSheet } from '../../../../src/system/sheet/processor-sheet';
import { findCores } from '../../../../src/system/wiring/find-core';
import { searchWiring } from '../../../../src/system/wiring/search-wiring';
import { stateProblem } from '../../../../src/system/wiring/state-problem';
import { wireLayout } from '../../../../src/system/wiring/wire-layout';
import type { NotWired, WiredOutput } from '../../../../src/system/wiring/wiring';
import { sampleNames, sampleSheet } from '../sheet/sample-sheets';
import { anyLayout, anySheet, namedLayout } from './random-sheets';
import { anyWiring, brokenRules, rolesByHand } from './rules-by-hand';

const labelsOf = (layout: Layout): ChannelLabel[] => layout.channels.map(({ label }) => label);

function wiredOutputs(layout: Layout, sheet: ProcessorSheet): readonly WiredOutput[] {
  const wiring = wireLayout(layout, sheet);
  if (!wiring.wired) throw new Error(wiring.conflicts.map(({ sentence }) => sentence).join(' '));
  return wiring.outputs;
}

function refused(name: string, sheet: ProcessorSheet): NotWired {
  const wiring = wireLayout(namedLayout(name), sheet);
  if (wiring.wired) throw new Error(`${name} was wired`);
  return wiring;
}

/** Holds an answer against the rules: every channel once, in its role, and no rule broken. */
function expectRight(outputs: readonly WiredOutput[], layout: Layout, sheet: ProcessorSheet): void {
  const byHand = rolesByHand(labelsOf(layout), sheet);
  expect(new Map(outputs.map(({ channel, role }) => [channel, role]))).toEqual(byHand);
  expect(outputs).toHaveLength(layout.channels.length);
  const places = new Map(outputs.map(({ role, output }) => [role, output]));
  expect(brokenRules(places, sheet)).toEqual([]);
}

const written = (outputs: readonly WiredOutput[]): string =>
  outputs.map(({ output, channel }) => `${output} ${channel}`).join(', ');

describe('wireLayout on the sample of eleven outputs', () => {
  const sheet = sampleSheet('sample-11');
  const bed = '1 FL, 2 FR, 3 FC, 4 SiL, 5 SiR';

  it.each([
    ['5.1', `${bed}, S1 Sub 1`],
    ['5.2.4', `${bed}, A1 TpFL, A2 TpFR, B1 TpBL, B2 TpBR, S1 Sub 1, S2 Sub 2`],
    ['7.2.4', `${bed}, 6 BL, 7 BR, A1 TpFL, A2 TpFR, B1 TpBL, B2 TpBR, S1 Sub 1, S2 Sub 2`],
    ['9.1.2', `${bed}, 6 BL, 7 BR, A1 FLw, A2 FRw, B1 TpFL, B2 TpFR, S1 Sub 1`],
    ['5.1.6', `${bed}, 6 TpBL, 7 TpBR, A1 TpFL, A2 TpFR, B1 TpSiL, B2 TpSiR, S1 Sub 1`],
  ])('wires %s', (name, expected) => {
    expect(written(wiredOutputs(namedLayout(name), sheet))).toBe(expected);
  });

  it('lets a single declared pair of heights play as middle heights', () => {
    const roles = wiredOutputs(namedLayout('9.1.2'), sheet).map(({ channel, role }) => [
      channel,
      role,
    ]);
    expect(roles).toContainEqual(['TpFL', 'TpSiL']);
    expect(roles).toContainEqual(['TpFR', 'TpSiR']);
  });

  it('refuses 9.1.4 since wides and front heights want pair A', () => {
    const { conflicts, nearest } = refused('9.1.4', sheet);
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({
      rules: ['one role per output'],
      outputs: ['A1', 'A2'],
      channels: ['TpFL', 'TpFR', 'FLw', 'FRw'],
    });
    expect(conflicts[0]?.sentence).toContain(
      'The front heights and the wides cannot be wired together',
    );
    expect(nearest.slice(0, 2)).toEqual([
      { name: '7.1.4', changes: ['without the wides'] },
      { name: '9.1.2', changes: ['1 pair of heights fewer'] },
    ]);
  });

  it('refuses 7.1.6 since back heights go beside the back surrounds only on pair B', () => {
    const { conflicts, nearest } = refused('7.1.6', sheet);
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({
      rules: ['one role per output', 'role only without others'],
      outputs: ['6', '7', 'B1', 'B2'],
      channels: ['TpBL', 'TpBR', 'TpSiL', 'TpSiR'],
    });
    expect(conflicts[0]?.sentence).toContain(
      'Back left and Back right can carry the back heights only without the back surrounds',
    );
    expect(nearest.slice(0, 2)).toEqual([
      { name: '5.1.6', changes: ['without the back surrounds'] },
      { name: '7.1.4', changes: ['1 pair of heights fewer'] },
    ]);
  });

  it('refuses 5.3.2 for want of a third sub output', () => {
    const { conflicts, nearest } = refused('5.3.2', sheet);
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({ outputs: ['S1', 'S2'], channels: ['Sub 3'] });
    expect(conflicts[0]?.sentence).toBe(
      'Subwoofer 3 cannot be wired: no output can carry subwoofer 3 (outputs for subs: Sub 1 and Sub 2).',
    );
    expect(nearest[0]).toEqual({ name: '5.2.2', changes: ['1 sub fewer'] });
  });
});

describe('wireLayout', () => {
  it.each(sampleNames)('is right about every layout on %s', (name) => {
    const sheet = sampleSheet(name);
    for (const bed of layoutChoices.beds) {
      for (const subs of layoutChoices.subs) {
        for (const heights of layoutChoices.heights) {
          const layout = namedLayout(`${bed}.${subs}.${heights}`);
          const wiring = wireLayout(layout, sheet);
          if (wiring.wired) expectRight(wiring.outputs, layout, sheet);
          else if (name !== 'sample-16') expect(anyWiring(labelsOf(layout), sheet)).toBe(false);
          expect(wiring.wired || name !== 'sample-16').toBe(true);
        }
      }
    }
  });

  it('keeps every rule of random sheets, and refuses only what no wiring can keep', () => {
    const seen = { wired: 0, refused: 0 };
    fc.assert(
      fc.property(anySheet, anyLayout, (sheet, layout) => {
        const wiring = wireLayout(layout, sheet);
        seen[wiring.wired ? 'wired' : 'refused']++;
        if (wiring.wired) expectRight(wiring.outputs, layout, sheet);
        else expect(anyWiring(labelsOf(layout), sheet)).toBe(false);
      }),
      { seed: 4, numRuns: 800 },
    );
    expect(Math.min(seen.wired, seen.refused)).toBeGreaterThan(120);
  });

  it('names rules, outputs of the sheet and declared channels in every refusal', () => {
    fc.assert(
      fc.property(anySheet, anyLayout, (sheet, layout) => {
        const wiring = wireLayout(layout, sheet);
        if (wiring.wired) return;
        expect(wiring.conflicts.length).toBeGreaterThan(0);
        for (const { rules, outputs, channels, sentence } of wiring.conflicts) {
          expect(rules.length).toBeGreaterThan(0);
          expect(channels.length).toBeGreaterThan(0);
          expect(sheet.outputs.map(({ id }) => id)).toEqual(expect.arrayContaining([...outputs]));
          expect(labelsOf(layout)).toEqual(expect.arrayContaining([...channels]));
          expect(sentence).toMatch(/^[A-Z][^.]* cannot be wired.*\.$/);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('offers only layouts that some wiring keeps, and each once', () => {
    fc.assert(
      fc.property(anySheet, anyLayout, (sheet, layout) => {
        const wiring = wireLayout(layout, sheet);
        if (wiring.wired) return;
        const names = wiring.nearest.map(({ name }) => name);
        expect(new Set(names).size).toBe(names.length);
        for (const name of names) {
          expect(anyWiring(labelsOf(namedLayout(name)), sheet)).toBe(true);
        }
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  it('gives reasons of which no part can be left out', () => {
    let cores = 0;
    fc.assert(
      fc.property(anySheet, anyLayout, (sheet, layout) => {
        const roles = rolesByHand(labelsOf(layout), sheet);
        if (!roles) return;
        const problem = stateProblem([...roles.values()], sheet);
        for (const core of findCores(problem)) {
          cores++;
          expect(searchWiring(problem, core)).toBeNull();
          for (const rule of core) {
            const rest = core.filter((other) => other !== rule);
            expect(searchWiring(problem, rest)).not.toBeNull();
          }
        }
      }),
      { seed: 7, numRuns: 500 },
    );
    expect(cores).toBeGreaterThan(100);
  });

  it('gives the same answer twice', () => {
    fc.assert(
      fc.property(anySheet, anyLayout, (sheet, layout) => {
        expect(wireLayout(layout, sheet)).toEqual(wireLayout(layout, structuredClone(sheet)));
      }),
      { seed: 8, numRuns: 100 },
    );
  });
});

describe('wireLayout on sixteen outputs that carry anything', () => {
  const free = sampleSheet('sample-16');
  const sixteen = free.outputs.slice(0, 16);
  const all = labelsOf(namedLayout('9.4.6')).map((channel) => ({ channel }));
  const outputs = sixteen.map((output) => ({ ...output, roles: all }));
  const bare: ProcessorSheet = { ...free, outputs, filling: { channels: [], outputs: [] } };
  const pairs = [0, 2, 4, 6, 8, 10, 12].map((at): [string, string] => [
    outputs[at]?.id ?? '',
    outputs[at + 1]?.id ?? '',
  ]);

  it('sees that nineteen channels are too many', () => {
    const { conflicts, nearest } = refused('9.4.6', bare);
    expect(conflicts[0]?.outputs).toHaveLength(16);
    expect(conflicts[0]?.channels).toHaveLength(17);
    // Two changes that take three away: the centre or a sub, and the wides or a pair of heights.
    expect(nearest.slice(0, 4).map(({ name }) => name)).toEqual([
      '6.4.6',
      '7.3.6',
      '8.4.4',
      '9.3.4',
    ]);
  });

  it('fills pairs and the two outputs that stand alone', () => {
    const sheet = { ...bare, pairs };
    const layout = namedLayout('9.1.6');
    expectRight(wiredOutputs(layout, sheet), layout, sheet);
    const { conflicts } = refused('9.2.6', sheet);
    expect(conflicts[0]?.channels).toEqual(['FC', 'Sub 1', 'Sub 2']);
  });

  it('leaves no gap when outputs fill in order', () => {
    const chain = [...outputs].reverse().map(({ id }) => [id]);
    const sheet = { ...bare, filling: { channels: [], outputs: [chain] } };
    const layout = namedLayout('5.2.4');
    const used = wiredOutputs(layout, sheet).map(({ output }) => output);
    expect(used).toEqual(outputs.slice(-11).map(({ id }) => id));
  });
});
