import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MicrophoneCalibration } from '../../../src/microphone/calibration';
import { parseCalibration } from '../../../src/microphone/parse-calibration';
import { isTrouble } from '../../../src/trouble';

const hz = [20, 63, 250, 1000, 4000, 16_000];
const db = [-1.5, -0.25, 0, 0, 0.5, 2.25];
const degrees = [12.5, 3, 0, -1, -4.5, -20];

/** Rows of the curve above, written by `write`. */
function rows(write: (hz: number, db: number, degrees: number) => string, end = '\n'): string {
  return hz.map((f, i) => write(f, db[i] ?? 0, degrees[i] ?? 0)).join(end);
}

function parse(text: string | Uint8Array) {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  return parseCalibration(bytes, 'microphone.txt');
}

function accepted(text: string | Uint8Array): MicrophoneCalibration {
  const parsed = parse(text);
  if (isTrouble(parsed)) throw new Error(parsed.sentence);
  return parsed;
}

function refusal(text: string | Uint8Array): string {
  const parsed = parse(text);
  if (!isTrouble(parsed)) throw new Error('was accepted');
  expect(parsed.trouble).toBe('bad-calibration');
  return parsed.sentence;
}

function utf16(text: string, order: 'little' | 'big', mark: boolean): Uint8Array {
  const units = [...(mark ? '\ufeff' : ''), ...text].map((c) => c.charCodeAt(0));
  const bytes = units.flatMap((unit) => [unit & 255, unit >> 8]);
  return Uint8Array.from(order === 'little' ? bytes : bytes.map((_, i) => bytes[i ^ 1] ?? 0));
}

const comma = (value: number): string => value.toFixed(2).replace('.', ',');

describe('parseCalibration reads', () => {
  it.each([
    ['spaces', rows((f, d) => `${f}   ${d}`)],
    ['spaces before and behind', rows((f, d) => `  ${f} ${d}  `)],
    ['tabs', rows((f, d) => `${f}\t${d}`)],
    ['commas', rows((f, d) => `${f.toFixed(1)},${d.toFixed(2)}`)],
    ['commas with a space', rows((f, d) => `${f}, ${d}`)],
    ['semicolons', rows((f, d) => `${f};${d}`)],
    ['semicolons at the end too', rows((f, d) => `${f};${d};`)],
    ['Windows line ends', rows((f, d) => `${f} ${d}`, '\r\n')],
    ['old line ends', rows((f, d) => `${f} ${d}`, '\r')],
    ['exponents', rows((f, d) => `${f.toExponential(4)} ${d.toExponential(3)}`)],
    ['a true minus sign', rows((f, d) => `${f} ${String(d).replace('-', '−')}`)],
    ['plus signs', rows((f, d) => `+${f} ${d < 0 ? d : `+${d}`}`)],
    ['decimal commas between semicolons', rows((f, d) => `${comma(f)};${comma(d)}`)],
    ['decimal commas between tabs', rows((f, d) => `${comma(f)}\t${comma(d)}`)],
    ['decimal commas between spaces', rows((f, d) => `${comma(f)} ${comma(d)}`)],
    ['decimal commas between commas', rows((f, d) => `${comma(f)},${comma(d)}`)],
    ['decimal commas between commas with a space', rows((f, d) => `${comma(f)}, ${comma(d)}`)],
    ['whole hertz and decimal commas between commas', rows((f, d) => `${f},${comma(d)}`)],
  ])('%s', (_, text) => {
    expect(accepted(text)).toEqual({ name: 'microphone.txt', hz, db, phaseDegrees: null });
  });

  it.each([
    ['spaces', rows((f, d, p) => `${f} ${d} ${p}`)],
    ['commas', rows((f, d, p) => `${f},${d.toFixed(2)},${p}`)],
    [
      'decimal commas between semicolons',
      rows((f, d, p) => `${comma(f)}; ${comma(d)}; ${comma(p)}`),
    ],
    ['decimal commas between commas', rows((f, d, p) => [f, d, p].map(comma).join(','))],
  ])('a phase behind %s', (_, text) => {
    expect(accepted(text).phaseDegrees).toEqual(degrees);
  });

  it('past notes, headings and a line with the sensitivity', () => {
    const notes = [
      'Frequency\tLevel',
      '"Sensitivity -38.2 dB"',
      '# 1 kHz is 0 dB',
      '* 2 made up',
      '; 3 ; 4',
      '// 5 6',
      '',
    ];
    const text = `${notes.join('\n')}\n${rows((f, d) => `${f}\t${d} # ok`)}\n\n# end\n`;
    expect(accepted(text)).toMatchObject({ hz, db });
  });

  it('a byte order mark, and UTF-16 of both orders with and without one', () => {
    const text = `# gain\r\n${rows((f, d) => `${f} ${d}`, '\r\n')}`;
    for (const bytes of [
      new TextEncoder().encode(`\ufeff${text}`),
      utf16(text, 'little', true),
      utf16(text, 'big', true),
      utf16(text, 'little', false),
      utf16(text, 'big', false),
    ]) {
      expect(accepted(bytes)).toMatchObject({ hz, db });
    }
  });

  it('falling and unsorted rows, and the same row twice', () => {
    const lines = rows((f, d) => `${f} ${d}`).split('\n');
    expect(accepted(lines.toReversed().join('\n'))).toMatchObject({ hz, db });
    const mixed = [...lines.slice(3), ...lines.slice(0, 3), lines[2] ?? ''];
    expect(accepted(mixed.join('\n'))).toMatchObject({ hz, db });
  });

  it('notes that are no UTF-8', () => {
    const text = rows((f, d) => `${f} ${d}`);
    const bytes = Uint8Array.from([...[35, 0xb0, 0xe9, 10], ...new TextEncoder().encode(text)]);
    expect(accepted(bytes)).toMatchObject({ hz, db });
  });
});

describe('parseCalibration refuses', () => {
  const good = rows((f, d) => `${f} ${d}`);

  it.each([
    ['nothing', '', /empty/],
    ['notes alone', '# nothing\nnothing', /no row of numbers/],
    ['one row', '1000 0', /one frequency/],
    ['few rows', '20 0\n100 0\n1000 0\n9000 0', /4 frequencies.*at least 5/],
    ['less than two octaves', '100 0\n120 0\n140 0\n160 0\n380 0', /100 to 380 Hz.*two octaves/],
    ['a web page', ' <!doctype html><p>20 1', /web page/],
    ['JSON', '{"hz": [20, 40]}', /JSON/],
    ['a WAV file', 'RIFF\u0004\u0000\u0000\u0000WAVE', /audio/],
    ['a spreadsheet', 'PK\u0003\u0004aaaa', /spreadsheet/],
    ['binary', 'ab\u0001\u0000cd', /no text/],
  ])('%s', (_, text, why) => {
    expect(refusal(text)).toMatch(why);
  });

  it.each([
    ['NaN', `${good}\n18000 NaN`, 'Line 7', /NaN/],
    ['NaN as a frequency', `NaN 0\n${good}`, 'Line 1', /NaN/],
    ['a word in a number', `# x\n20 0.5dB\n${good}`, 'Line 2', /0\.5dB/],
    ['a word between the rows', `${good}\nmore\n18000 1`, 'Line 7', /more/],
    ['a frequency of 0', `0 1\n${good}`, 'Line 1', /frequency is 0 Hz/],
    ['a negative frequency', `${good}\n-5 1`, 'Line 7', /frequency is -5 Hz/],
    ['a frequency beyond all microphones', `${good}\n2e5 0\n300000 1`, 'Line 8', /300000 Hz/],
    ['a number beyond all numbers', `${good}\n1e999 1`, 'Line 7', /no number/],
    ['levels that are no response', `${good}\n18000 94`, 'Line 7', /94 dB/],
    [
      'a phase with a delay in it',
      `20 1 9\n${rows((f, d) => `${f + 1} ${d} -9000`)}`,
      'Line 2',
      /delay/,
    ],
    ['two values for one frequency', `${good}\n250 3`, 'Line 7', /line 3/],
    ['a row of another width', `${good}\n18000 1 3`, 'Line 7', /line 1 has 2/],
    ['too many columns', '20 1 2 3', 'Line 1', /4 numbers/],
    ['one column', '20\n30\n40\n50\n60', 'Line 1', /one number/],
    ['points and commas', `${good}\n18000,5 1`, 'Line 7', /decimals/],
    ['thousands', '1,000.5 2', 'Line 1', /decimals/],
    ['an endless line', `20 ${' '.repeat(100_000)}x`, 'Line 1', /too long/],
  ])('%s, with the line', (_, text, line, why) => {
    const sentence = refusal(text);
    expect(sentence).toContain(line);
    expect(sentence).toMatch(why);
  });

  it('commas that can be read in two ways', () => {
    expect(refusal(hz.map((f) => `${f},1,5`).join('\n'))).toMatch(
      /“20,1,5” can be read in two ways/,
    );
  });

  it('commas between numbers and in some of them', () => {
    const mixed = '20,5,-0,25\n31,0,5\n63,1\n125,0\n250,5,0,5';
    expect(refusal(mixed)).toMatch(/“20,5,-0,25” cannot be told apart.*semicolons/);
  });

  it('files over 2 MB and over 100000 rows', () => {
    expect(refusal(new Uint8Array(2_000_001).fill(32))).toMatch(/2 MB/);
    const many = Array.from({ length: 100_001 }, (_, i) => `${i + 1} 0`).join('\n');
    expect(refusal(many)).toMatch(/100000 rows/);
  });
});

describe('parseCalibration never throws, and never gives NaN', () => {
  const check = (bytes: Uint8Array): void => {
    const parsed = parseCalibration(bytes, 'x');
    if (isTrouble(parsed)) {
      expect(parsed.sentence).toMatch(/\.$/);
      return;
    }
    const numbers = [...parsed.hz, ...parsed.db, ...(parsed.phaseDegrees ?? [])];
    expect(numbers.every(Number.isFinite)).toBe(true);
    expect(parsed.hz.every((f, i) => f > (parsed.hz[i - 1] ?? 0))).toBe(true);
    expect(parsed.db).toHaveLength(parsed.hz.length);
  };

  it('for any bytes', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), check), { numRuns: 500, seed: 7 });
  });

  it('for text that looks like a calibration file', () => {
    const piece = fc.oneof(
      fc.double({ noDefaultInfinity: true }).map(String),
      fc.integer({ min: -50, max: 30_000 }).map(String),
      fc.constantFrom(' ', ',', ';', '\t', '\n', '\r\n', '#', '.', '-', 'NaN', 'e5', '"', '\u0000'),
    );
    const text = fc.array(piece, { maxLength: 80 }).map((pieces) => pieces.join(''));
    const property = fc.property(text, (t) => check(new TextEncoder().encode(t)));
    fc.assert(property, { numRuns: 1000, seed: 8 });
  });

  it('for good files with a few bytes changed', () => {
    const good = new TextEncoder().encode(rows((f, d, p) => `${f};${comma(d)};${comma(p)}`));
    const change = fc.tuple(fc.nat(good.length - 1), fc.nat(255));
    const property = fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
      const bytes = good.slice();
      for (const [at, byte] of changes) bytes[at] = byte;
      check(bytes);
    });
    fc.assert(property, { numRuns: 1000, seed: 9 });
  });
});
