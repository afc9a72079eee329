import { describe, expect, it } from 'vitest';
import { numberOption } from '../../../src/command/number-option';

const read = (text: string, whole = false) =>
  numberOption(new Map([['distance', text]]), 'distance', {
    low: 0.5,
    high: 30,
    unit: 'm',
    ...(whole ? { whole: true as const } : {}),
  });

describe('numberOption', () => {
  it.each([
    ['2.40', 2.4],
    ['.5', 0.5],
    ['+3', 3],
    ['1e1', 10],
    [' 7 ', 7],
    ['30', 30],
  ])('takes "%s"', (text, value) => {
    expect(read(text)).toBe(value);
  });

  it.each(['', 'two', '2,40', '0x10', 'NaN', 'Infinity', '30.01', '0.49', '-1', '2.4m'])(
    'refuses "%s" with the range in the sentence',
    (text) => {
      expect(read(text)).toEqual({
        trouble: 'bad-number',
        sentence: `--distance must be a number, with a dot for decimals, from 0.5 to 30 m, and "${text.trim()}" is not.`,
      });
    },
  );

  it('asks for a whole number where one is due', () => {
    expect(read('4', true)).toBe(4);
    expect(read('4.5', true)).toMatchObject({ trouble: 'bad-number' });
  });
});
