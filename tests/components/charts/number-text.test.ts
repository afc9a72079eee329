import { describe, expect, it } from 'vitest';
import { lengthText } from '../../../src/locale/length-text';
import {
  dbText,
  durationText,
  hzText,
  intervalDigits,
  intervalText,
  millisecondsText,
  numberText,
  signedText,
} from '../../../src/locale/number-text';

describe('numbers as text', () => {
  it('sets a true minus sign and a thin space before the unit', () => {
    expect(dbText(-2.5)).toBe('\u22122.5\u202fdB');
    expect(lengthText(1.918)).toBe('1.92\u202fm');
    expect(millisecondsText(-0.00143)).toBe('\u22121.43\u202fms');
  });

  it('has no negative zero', () => {
    expect(numberText(-0.04, 1)).toBe('0.0');
    expect(signedText(-0.001, 1)).toBe('0.0');
    expect(signedText(0.001, 1)).toBe('0.0');
  });

  it('sets a plus only where a sign is asked for', () => {
    expect(signedText(1.5, 1)).toBe('+1.5');
    expect(numberText(1.5, 1)).toBe('1.5');
  });

  it('says frequencies as they are typed', () => {
    expect(hzText(62.4)).toBe('62\u202fHz');
    expect(hzText(16.25)).toBe('16.3\u202fHz');
    expect(hzText(1000)).toBe('1\u202fkHz');
    expect(hzText(1250)).toBe('1.25\u202fkHz');
  });

  it('joins an interval by a dash, or by a word where a sign stands', () => {
    expect(intervalText([58.2, 66.7])).toBe('58\u201367');
    expect(intervalText([-43.5, -42.9], 1)).toBe('\u221243.5 to \u221242.9');
  });

  it('gives an interval the decimals that tell its ends apart', () => {
    expect(intervalDigits([-43.5, -42.9], 1)).toBe(1);
    expect(intervalDigits([37.41, 37.43], 1)).toBe(2);
    expect(intervalDigits([37.4, 37.4], 1)).toBe(1);
    expect(intervalDigits([NaN, 1], 1)).toBe(1);
  });

  it('says durations in seconds, then in minutes', () => {
    expect(durationText(31.2)).toBe('32\u202fs');
    expect(durationText(120)).toBe('2\u202fmin');
    expect(durationText(145)).toBe('2\u202fmin 25\u202fs');
  });

  it('never prints what is no number', () => {
    for (const nothing of [NaN, Infinity, null, undefined]) {
      for (const text of [numberText, signedText, hzText, dbText, lengthText, millisecondsText]) {
        expect(text(nothing)).toBe('\u2013');
      }
      expect(durationText(nothing)).toBe('\u2013');
    }
    expect(intervalText([NaN, 3])).toBe('\u2013');
    expect(intervalText(null)).toBe('\u2013');
  });
});
