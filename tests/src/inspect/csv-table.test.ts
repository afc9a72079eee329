import { describe, expect, it } from 'vitest';
import { csvTable } from '../../../src/inspect/csv-text';
import { readStrictCsv } from './strict-csv';

describe('a table of texts', () => {
  it('is read back as it was, numbers plain', () => {
    const rows = [
      ['a "word", or two', '-1.5'],
      ['line\r\nend', ''],
    ];
    expect(readStrictCsv(csvTable(['text', 'number'], rows))).toEqual([
      ['text', 'number'],
      ...rows,
    ]);
  });

  it.each(['=1+1', '+1.5 dB', '-x', '@a', '\ttab'])('defuses %s', (text) => {
    expect(readStrictCsv(csvTable(['text'], [[text]]))[1]).toEqual([`'${text}`]);
  });

  it('is refused when a row has another length', () => {
    expect(() => csvTable(['a', 'b'], [['1']])).toThrow('rows must have 2 fields, got 1');
  });
});
