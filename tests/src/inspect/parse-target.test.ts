import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseTarget } from '../../../src/inspect/parse-target';
import { isTrouble } from '../../../src/trouble';

const parse = (text: string) => parseTarget(new TextEncoder().encode(text));

function refusal(text: string): string {
  const parsed = parse(text);
  if (!isTrouble(parsed)) throw new Error('was accepted');
  expect(parsed.trouble).toBe('bad-file');
  return parsed.sentence;
}

describe('parseTarget reads', () => {
  const points = { hz: [20, 100, 1000, 16_000], db: [6.5, 3, 0, -2.25] };

  it.each([
    ['points and spaces', '20 6.5\n100 3\n1000 0\n16000 -2.25'],
    ['decimal commas and semicolons', '20;6,5\r\n100;3,0\r\n1000;0\r\n16000;-2,25'],
    ['points and commas', '20.0,6.5\n100,3\n1000,0\n16000,-2.25\n'],
    ['decimal commas and tabs', '20,0\t6,5\n100,0\t3\n1000,0\t0\n16000,0\t-2,25'],
    ['headings and notes', 'Hz dB\n# warm\n20 6.5 # bass\n\n100 3\n1000 0\n16000 -2.25'],
    ['any order', '1000 0\n16000 -2.25\n20 6.5\n100 3'],
  ])('%s', (_, text) => {
    expect(parse(text)).toEqual(points);
  });

  it('two points', () => {
    expect(parse('20 3\n20000 -3')).toEqual({ hz: [20, 20_000], db: [3, -3] });
  });
});

describe('parseTarget refuses', () => {
  it.each([
    ['nothing', '', /^The target file is empty/],
    ['one point', '100 0', /^The target file has one frequency; a target needs at least 2/],
    ['words', 'a warm curve', /^The target file has no row of numbers/],
    ['a web page', '<p>20 1', /^The target file is a web page/],
    ['a third column', '20 1 0\n40 1 0', /^Line 1 of the target file: 3 numbers where two must/],
    ['a word for a number', '20 1\n40 loud', /^Line 2 of the target file: “loud” is no number/],
    ['a frequency of 0', '20 1\n0 1', /^Line 2 of the target file: the frequency is 0 Hz/],
    ['no level', '20 1\n\n40 94', /^Line 3 of the target file: 94 dB; .* within ±60 dB/],
    ['two levels at one frequency', '20 1\n40 1\n20 2', /^Line 3 .* than in line 1; keep one/],
    ['commas that mean two things', '20,1,5\n40,1,5', /^The target file has commas between/],
  ])('%s', (_, text, why) => {
    expect(refusal(text)).toMatch(why);
  });

  it('without throwing, for any bytes', () => {
    const property = fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      const parsed = parseTarget(bytes);
      if (isTrouble(parsed)) return parsed.sentence.endsWith('.');
      return [...parsed.hz, ...parsed.db].every(Number.isFinite);
    });
    fc.assert(property, { numRuns: 500, seed: 61 });
  });
});
