import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addGroup,
  declarableGroups,
  hasGroup,
  labelsOf,
  layoutDeviation,
  removeGroup,
  setSubs,
} from '../../../src/system/edit-speakers';
import { layoutFromName } from '../../../src/system/layout';
import { leftOutContent } from '../../../src/system/left-out-content';
import { isTrouble } from '../../../src/trouble';
import { known, layout, sentenceOf } from './sample-plan';

describe('adding and taking away speakers', () => {
  it.each([
    ['5.1', 'backs', '7.1'],
    ['7.2', 'wides', '9.2'],
    ['5.1', 'front heights', '5.1.2'],
    ['5.1.2', 'back heights', '5.1.4'],
    ['5.1.4', 'middle heights', '5.1.6'],
    ['4.0', 'centre', '5.0'],
    ['3.1', 'sides', '5.1'],
    ['5.1', 'middle heights', 'FL FR FC Sub1 SiL SiR TpSiL TpSiR'],
    ['5.0', 'wides', 'FL FR FC SiL SiR FLw FRw'],
  ] as const)('turns %s with %s into %s, and back again', (before, group, after) => {
    const more = known(addGroup(layout(before), group));
    expect(more.name).toBe(after);
    expect(known(removeGroup(more, group)).name).toBe(before);
  });

  it('counts subs from 1', () => {
    expect(known(setSubs(layout('5.1.4'), 3)).name).toBe('5.3.4');
    expect(known(setSubs(layout('5.4'), 0)).name).toBe('5.0');
    for (const count of [-1, 5, 1.5, NaN]) {
      expect(sentenceOf(setSubs(layout('5.1'), count))).toContain('0 to 4 subs');
    }
  });

  it('says why back surrounds cannot be without side surrounds', () => {
    for (const refused of [addGroup(layout('3.1'), 'backs'), removeGroup(layout('7.1'), 'sides')]) {
      expect(sentenceOf(refused)).toContain('a lone pair of surrounds is the side pair');
    }
    expect(sentenceOf(removeGroup(layout('7.1'), 'sides'))).toMatch(
      /^SiL and SiR .* stay: .* The layout stays 7\.1\.$/,
    );
  });

  it('reaches only layouts that have a name which gives them back', () => {
    const step = fc.record({
      group: fc.constantFrom(...declarableGroups),
      add: fc.boolean(),
      subs: fc.integer({ min: 0, max: 4 }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        let now = layout('2.0');
        for (const { group, add, subs } of steps) {
          const next = add ? addGroup(now, group) : removeGroup(now, group);
          if (!isTrouble(next)) {
            expect(hasGroup(next, group)).toBe(add);
            now = next;
          }
          now = known(setSubs(now, subs));
          expect(layoutFromName(now.name)).toEqual(now);
          expect(now.channels.filter(({ kind }) => kind === 'sub')).toHaveLength(subs);
        }
      }),
      { seed: 41, numRuns: 200 },
    );
  });
});

describe('the deviation of a layout', () => {
  it.each([
    ['5.1.2', null],
    ['FL FR FC Sub1 SiL SiR TpSiL TpSiR', 'with TpSiL and TpSiR instead of TpFL and TpFR'],
    ['FL FR FC SiL SiR FLw FRw', 'with FLw and FRw instead of BL and BR'],
  ])('of %s is %s', (name, words) => {
    expect(layoutDeviation(layout(name))).toBe(words);
  });
});

describe('what a group carries', () => {
  const names = ['2.0', '3.1', '5.1', '7.1', '9.4.6', 'FL FR FC SiL SiR TpSiL TpSiR'];

  it('goes to speakers that are there, the same left and right, when it is left out', () => {
    for (const name of names) {
      for (const group of [...declarableGroups, 'subs'] as const) {
        const { into, leftOut, listed } = leftOutContent(layout(name), group);
        const there = layout(name).channels.map(({ label }) => label);
        expect(into.length, `${group} of ${name}`).toBeGreaterThan(1);
        expect(into.length % 2).toBe(0);
        for (const label of into) {
          expect(there).toContain(label);
          expect(labelsOf(group)).not.toContain(label);
          expect(leftOut).toContain(label);
        }
        expect(listed).toContain('nobody plays');
      }
    }
  });

  it.each([
    ['5.1', 'centre', 'FL FR'],
    ['7.1', 'backs', 'SiL SiR'],
    ['5.1', 'wides', 'FL FR SiL SiR'],
    ['5.1.4', 'middle heights', 'TpFL TpFR TpBL TpBR'],
    ['5.1', 'middle heights', 'SiL SiR'],
    ['7.1', 'back heights', 'BL BR'],
    ['5.1.2', 'back heights', 'TpFL TpFR'],
  ] as const)('of %s without %s goes to %s (common practice, no source)', (name, group, into) => {
    expect(leftOutContent(layout(name), group).into.join(' ')).toBe(into);
  });
});
