import { describe, expect, it } from 'vitest';
import {
  readChain,
  readLabel,
  readNames,
  readNumbers,
  readOne,
  writeChain,
  writeNames,
} from '../../../../components/patch/sheet/list-text';
import { readGroups, writeGroups } from '../../../../components/patch/sheet/group-text';
import { readRoles, writeRoles } from '../../../../components/patch/sheet/role-text';

describe('lists as a person types them', () => {
  it('take names with commas between, and names with commas in quotation marks', () => {
    expect(readNames('A1, A2 ,B 1')).toEqual(['A1', 'A2', 'B 1']);
    expect(readNames('"left, front", "say ""hi""", x')).toEqual(['left, front', 'say "hi"', 'x']);
    expect(readNames(' , ')).toEqual([]);
  });

  it('come back from what was written, whatever the names hold', () => {
    const names = ['a', 'b, c', 'd > e', 'f "g"', '<b>h</b>', '"'];
    expect(readNames(writeNames(names))).toEqual(names);
    const chain = [['a', 'b > c'], ['d, e']];
    expect(readChain(writeChain(chain))).toEqual(chain);
  });

  it('take roles in their order, with what they are open without', () => {
    const roles = [{ channel: 'BL' }, { channel: 'TpBL', onlyWithout: ['BL', 'BR'] }];
    expect(readRoles('bl, tpbl unless BL or br')).toEqual(roles);
    expect(readRoles(writeRoles(roles))).toEqual(roles);
    expect(readRoles('TpBL unless ')).toEqual([{ channel: 'TpBL', onlyWithout: [] }]);
  });

  it('take groups as a sheet names them, and leave a stranger for the check to refuse', () => {
    expect(readGroups('Front heights, subs, attic')).toEqual(['front heights', 'subs', 'attic']);
    expect(writeGroups(['front heights', 'attic', 3])).toBe('front heights, attic, 3');
  });

  it('know a label in any case, with or without its blank, and leave a stranger as it is', () => {
    expect(['sub1', 'SUB 2', 'fc', 'Kitchen'].map(readLabel)).toEqual([
      'Sub 1',
      'Sub 2',
      'FC',
      'Kitchen',
    ]);
  });

  it('keep what is no number as text, so that the check can name it', () => {
    expect(readNumbers('40, 50 60.5;sixty')).toEqual([40, 50, 60.5, 'sixty']);
    expect(['0,03', '\u221212', '1e999', '', '--2'].map(readOne)).toEqual([
      0.03,
      -12,
      '1e999',
      '',
      '--2',
    ]);
  });
});
