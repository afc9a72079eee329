import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { logGrid } from '../../../dsp/response/smoothing';
import { seededRandom } from '../../../dsp/signal/random';
import { curvesToCsv, type SavedCurve } from '../../../src/inspect/curves-to-csv';
import { csvText } from '../../../src/inspect/csv-text';
import { expectClose } from '../../close';
import { readStrictCsv } from './strict-csv';

const facts = { layout: '5.1', speaker: null, position: 'Seat 1', takenAt: '2026-03-01T09:05:00Z' };
const random = seededRandom(81);
const grid = logGrid(12, 20_000, 24);
const curve = (name: string, values: (number | null)[], hz: ArrayLike<number>): SavedCurve => ({
  name,
  unit: 'dB re 500–2000 Hz',
  axis: { name: 'frequency', unit: 'Hz', values: hz },
  values,
  digits: { decimals: 2 },
});
const front = Array.from(grid, () => 40 * random() - 30);
const back = front.map((value, k) => (k < 5 ? null : value - 3));

describe('curvesToCsv', () => {
  const [file, ...others] = curvesToCsv(
    [curve('FL response', front, grid), curve('BL, "late" response', back, grid)],
    facts,
    'responses',
  );
  const text = file?.text ?? '';

  it('puts curves of one axis into one file', () => {
    expect(others).toHaveLength(0);
    expect(file?.name).toBe('5.1 Seat 1 2026-03-01 09-05 responses.csv');
  });

  it('is read back by a strict reader, to the digits that are written', () => {
    const [heading, ...rows] = readStrictCsv(text);
    expect(heading).toEqual([
      'frequency (Hz)',
      'FL response (dB re 500–2000 Hz)',
      'BL, "late" response (dB re 500–2000 Hz)',
    ]);
    expect(rows).toHaveLength(grid.length);
    for (const [k, row] of rows.entries()) {
      const hz = grid[k] ?? 0;
      expectClose(Number(row[0]), hz, 5e-6 * hz);
      expectClose(Number(row[1]), front[k], 0.005 + 1e-9);
      expect(row[1]).toMatch(/^-?\d+(\.\d{1,2})?$/);
      if (k < 5) expect(row[2]).toBe('');
      else expectClose(Number(row[2]), back[k], 0.005 + 1e-9);
    }
  });

  const python = spawnSync('python3', ['-c', 'import csv']).status === 0;

  it.runIf(python)("is read back by Python's strict reader", () => {
    const script = [
      'import csv, io, json, sys',
      'text = sys.stdin.buffer.read().decode("utf-8")',
      'print(json.dumps(list(csv.reader(io.StringIO(text, newline=""), strict=True))))',
    ].join('\n');
    const run = spawnSync('python3', ['-c', script], { input: text, encoding: 'utf8' });
    expect(run.stderr).toBe('');
    expect(JSON.parse(run.stdout)).toEqual(readStrictCsv(text));
  });

  it('ends every row, the last too, with CRLF and has no other line end', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('gives every further axis a file of its own', () => {
    const bins = Array.from({ length: 100 }, (_, k) => k + 0.5);
    const files = curvesToCsv(
      [
        curve('FL', front, grid),
        curve('FR', bins, bins),
        curve('FC', front, Float64Array.from(grid)),
      ],
      facts,
      'responses',
    );
    expect(files.map(({ name }) => name)).toEqual([
      '5.1 Seat 1 2026-03-01 09-05 responses.csv',
      '5.1 Seat 1 2026-03-01 09-05 responses 2.csv',
    ]);
    const columns = files.map((each) => readStrictCsv(each.text)[0]?.length);
    expect(columns).toEqual([3, 2]);
  });

  it('writes as many digits of a fine axis as keep its steps apart', () => {
    const seconds = Array.from({ length: 2000 }, (_, n) => 1.3 + n / 192_000);
    const response: SavedCurve = {
      name: 'FL impulse response',
      unit: 'full scale',
      axis: { name: 'time', unit: 's', values: seconds },
      values: seconds.map((_, n) => (n % 2 === 0 ? 1 : -1) * 3.14159265e-7),
      digits: { significant: 6 },
    };
    const rows = readStrictCsv(curvesToCsv([response], facts, 'x')[0]?.text ?? '').slice(1);
    for (const [n, row] of rows.entries()) {
      expectClose(Number(row[0]), seconds[n], 0.1 / 192_000);
      expect(row[1]).toBe(n % 2 === 0 ? '0.000000314159' : '-0.000000314159');
    }
  });

  it('makes a heading harmless that a spreadsheet would run', () => {
    const [first] = curvesToCsv([curve('=HYPERLINK("x")', front, grid)], facts, 'x');
    const heading = readStrictCsv(first?.text ?? '')[0] ?? [];
    expect(heading[1]).toBe('\'=HYPERLINK("x") (dB re 500–2000 Hz)');
  });

  it('refuses no curve, missing values, NaN, and an axis that does not rise', () => {
    expect(() => curvesToCsv([], facts, 'x')).toThrow(RangeError);
    expect(() => curvesToCsv([curve('a', [1], [1, 2])], facts, 'x')).toThrow(RangeError);
    expect(() => curvesToCsv([curve('a', [1, NaN], [1, 2])], facts, 'x')).toThrow(RangeError);
    expect(() => curvesToCsv([curve('a', [1, 2], [2, 2])], facts, 'x')).toThrow(RangeError);
    expect(() => curvesToCsv([curve('a', [1, 2], [1, NaN])], facts, 'x')).toThrow(RangeError);
    expect(() => curvesToCsv([curve('a', [1], [NaN])], facts, 'x')).toThrow(RangeError);
  });
});

describe('csvText', () => {
  it('quotes what must be quoted', () => {
    const heading = ['a,b', 'say "x"', 'two\r\nlines', ' plain '];
    const text = csvText(heading, [['1', '', '-2.5', '0']]);
    expect(readStrictCsv(text)).toEqual([heading, ['1', '', '-2.5', '0']]);
    expect(text.startsWith('"a,b","say ""x""","two\r\nlines", plain \r\n')).toBe(true);
  });

  it('refuses rows of another length, and fields that are no numbers', () => {
    expect(() => csvText(['a'], [['1', '2']])).toThrow(RangeError);
    expect(() => csvText(['a'], [['=1']])).toThrow(RangeError);
    expect(() => csvText(['a'], [['1e5']])).toThrow(RangeError);
  });
});
