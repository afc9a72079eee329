import { describe, expect, it } from 'vitest';
import {
  modelsOf,
  noModelsDeclared,
  withAlike,
  withSameModel,
  withSheetF3,
  type SpeakerModels,
} from '../../../src/system/speaker-models';
import { layoutNamed } from '../reading/wired-room';

const layout = layoutNamed('7.2.2');

const told = (models: SpeakerModels): string[] =>
  modelsOf(layout, models).map(({ channels }) => channels.map(({ label }) => label).join(' '));

const sheets = (models: SpeakerModels): (number | null)[] =>
  modelsOf(layout, models).map(({ sheetF3Hz }) => sheetF3Hz);

describe('models of speakers', () => {
  it('are the pairs when nothing is said, and every sub for itself', () => {
    expect(told(noModelsDeclared)).toEqual([
      'FL FR',
      'FC',
      'Sub 1',
      'BL BR',
      'SiL SiR',
      'TpFL TpFR',
      'Sub 2',
    ]);
  });

  it('join groups, and groups that were joined before go along', () => {
    const backs = withSameModel(noModelsDeclared, 'backs', 'sides');
    expect(told(backs)).toContain('BL BR SiL SiR');
    const fronts = withSameModel(backs, 'sides', 'fronts');
    expect(told(fronts)).toContain('FL FR BL BR SiL SiR');
    expect(withSameModel(fronts, 'fronts', 'backs')).toBe(fronts);
    expect(told(withSameModel(fronts, 'backs', null))).toContain('FL FR SiL SiR');
  });

  it('part a pair, also one that was joined, and come back as they were', () => {
    const joined = withSameModel(noModelsDeclared, 'sides', 'fronts');
    const parted = withAlike(joined, 'sides', false);
    expect(told(parted)).toEqual(expect.arrayContaining(['FL FR', 'SiL', 'SiR']));
    expect(told(withAlike(parted, 'sides', true))).toContain('FL FR SiL SiR');
  });

  it('join subs to one another only', () => {
    expect(told(withAlike(noModelsDeclared, 'subs', true))).toContain('Sub 1 Sub 2');
    expect(() => withSameModel(noModelsDeclared, 'subs', 'fronts')).toThrow(RangeError);
    expect(() => withSameModel(noModelsDeclared, 'centre', 'subs')).toThrow(RangeError);
  });

  it('have the sheet of any of their speakers, the first one’s before the others’', () => {
    const sides = withSheetF3(noModelsDeclared, ['SiL', 'SiR'], 70);
    expect(sheets(sides)).toEqual([null, null, null, null, 70, null, null]);
    const joined = withSameModel(sides, 'sides', 'fronts');
    expect(sheets(joined)[0]).toBe(70);
    const both = withSheetF3(joined, ['FL', 'FR', 'SiL', 'SiR'], 60);
    expect(sheets(both)[0]).toBe(60);
    expect(sheets(withSheetF3(both, ['FL', 'FR', 'SiL', 'SiR'], null))[0]).toBeNull();
  });

  it.each([9.9, 400.1, NaN])('refuse a sheet of %s Hz', (hz) => {
    expect(() => withSheetF3(noModelsDeclared, ['FC'], hz)).toThrow('between 10 and 400');
  });

  it('refuse a sheet of no speaker', () => {
    expect(() => withSheetF3(noModelsDeclared, [], 60)).toThrow('got none');
  });
});
