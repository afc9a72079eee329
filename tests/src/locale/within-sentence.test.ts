import { describe, expect, it } from 'vitest';
import { withinSentence } from '../../../src/locale/within-sentence';

describe('a text within a sentence', () => {
  it.each([
    ['Room number', 'room number'],
    ['All 31 lines hold', 'all 31 lines hold'],
    ['Öffnung', 'öffnung'],
    ['FL and FR', 'FL and FR'],
    ['LFE level', 'LFE level'],
    ['3 of 31 lines fail', '3 of 31 lines fail'],
    ['', ''],
  ])('turns %s into %s', (text, within) => {
    expect(withinSentence(text)).toBe(within);
  });
});
