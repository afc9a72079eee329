import { describe, expect, it } from 'vitest';
import { writeNumber } from '../../../src/inspect/write-number';

describe('writeNumber', () => {
  it.each([
    [-12.3456, 2, '-12.35'],
    [3, 2, '3'],
    [2.5, 2, '2.5'],
    [-0.001, 2, '0'],
    [1e-7, 8, '0.0000001'],
    [1200, 0, '1200'],
  ])('writes %d with %d decimals as %s', (value, decimals, text) => {
    expect(writeNumber(value, { decimals })).toBe(text);
  });

  it.each([
    [20_000.366, 7, '20000.37'],
    [0.000012345678, 4, '0.00001235'],
    [-0.99999, 3, '-1'],
    [123_456, 2, '123456'],
    [0, 6, '0'],
    [1e-12, 3, '0.000000000001'],
    [100, 3, '100'],
  ])('writes %d with %d significant digits as %s', (value, significant, text) => {
    expect(writeNumber(value, { significant })).toBe(text);
  });

  it.each([NaN, Infinity, -Infinity])('refuses %d', (value) => {
    expect(() => writeNumber(value, { decimals: 2 })).toThrow(RangeError);
  });

  it('refuses digits that are none', () => {
    expect(() => writeNumber(1, { decimals: -1 })).toThrow(RangeError);
    expect(() => writeNumber(1, { decimals: 0.5 })).toThrow(RangeError);
    expect(() => writeNumber(1, { significant: 0 })).toThrow(RangeError);
    expect(() => writeNumber(1, { significant: 18 })).toThrow(RangeError);
  });
});
