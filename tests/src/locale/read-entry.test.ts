import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthText, metresPerInch } from '../../../src/locale/length-text';
import { measures, type MeasureName } from '../../../src/locale/measure';
import { parseLength } from '../../../src/locale/parse-length';
import { parseNumber } from '../../../src/locale/parse-number';
import { readEntry } from '../../../src/locale/read-entry';
import { inLocale, plainAfterEach } from './set-locale';

plainAfterEach();

const tags = ['en-GB', 'en-US', 'de-DE', 'fr-FR', 'de-CH', 'sv-SE'];
const entry = (measure: MeasureName, min = -Infinity, max = Infinity) => ({
  label: 'Distance',
  unit: '',
  measure,
  min,
  max,
});

describe('a typed number', () => {
  it('has either mark in any locale, and no thousands', () => {
    for (const tag of tags) {
      inLocale(tag);
      expect(parseNumber('1,5')).toBe(1.5);
      expect(parseNumber('1.5')).toBe(1.5);
      expect(parseNumber('1,234')).toBe(1.234);
      expect(parseNumber(' −,5 ')).toBe(-0.5);
      for (const text of ['1,234.5', '1.234,5', '1 234', '1\u00a0234,5', "1'234", '1.234.567']) {
        expect(parseNumber(text), text).toBe('two readings');
      }
      for (const text of ['', '.', '1e3', '1.2.3', '12,34.5', 'NaN', '0x10', '1,,5', '- 1']) {
        expect(parseNumber(text), text).toBe('no number');
      }
    }
  });

  it('says what to type where it has two readings, with the mark of the locale', () => {
    expect(readEntry('1,234.5', entry('number'))).toContain('such as 1.5');
    inLocale('de-DE');
    expect(readEntry('1.234,5', entry('length'))).toContain('such as 1,5');
  });
});

describe('an empty field', () => {
  it('says that nothing was typed, and what to type', () => {
    expect(readEntry(' ', entry('length'))).toBe(
      'Nothing was typed: type a length, such as 2.4; distance stays as it was.',
    );
    expect(readEntry('', entry('number'))).toContain('type a number; distance stays');
    expect(readEntry('', entry('temperature'))).toContain('type a temperature, such as 20;');
    expect(readEntry('', entry('length', 0.3, 20))).toContain('type a number from 0.3 to 20 m;');
    inLocale('en-US');
    expect(readEntry('', entry('length'))).toContain(`such as 7' 10.5";`);
  });
});

/** A foot is 0.3048 m, an inch 0.0254 m; worked out by hand. */
describe('a typed length', () => {
  const same = [
    ['2.4', 2.4, 2.4 * 0.3048],
    ['2,4 m', 2.4, 2.4],
    ['240 cm', 2.4, 2.4],
    ['2400mm', 2.4, 2.4],
    ['94 in', 2.3876, 2.3876],
    ['94"', 2.3876, 2.3876],
    [`7'10"`, 2.3876, 2.3876],
    ['7’ 10”', 2.3876, 2.3876],
    ['7′10.5″', 2.4003, 2.4003],
    [`7'10''`, 2.3876, 2.3876],
    ['7 ft 10 in', 2.3876, 2.3876],
    ['7 feet, 10 inches', 2.3876, 2.3876],
    ['7ft', 2.1336, 2.1336],
    ['7.5 ft', 2.286, 2.286],
    ['7 ft 10 1/2 in', 2.4003, 2.4003],
    ['7\'-10 1/2"', 2.4003, 2.4003],
    ['1/2 in', 0.0127, 0.0127],
    [`−7' 10"`, -2.3876, -2.3876],
  ] as const;
  for (const [text, metric, imperial] of same) {
    it(`may be ${text}`, () => {
      expect(parseLength(text, 'm')).toBeCloseTo(metric, 9);
      expect(parseLength(text, 'ft')).toBeCloseTo(imperial, 9);
    });
  }

  it('is refused where it is none', () => {
    for (const text of ['', 'far', '7 ft 12 in', `7.5' 3"`, '7 10', '1/0 in', '3 miles', "'"]) {
      expect(parseLength(text, 'ft'), text).toBe('no number');
    }
    for (const text of ['1,234.5 m', '1.234,5 ft', '1 234 mm']) {
      expect(parseLength(text, 'm'), text).toBe('two readings');
    }
  });

  it('is held to its range in the preferred unit, and the range itself may be typed', () => {
    const range = entry('length', 0.3, 20);
    expect(readEntry('21', range)).toContain('between 0.3 and 20 m');
    inLocale('de-DE', 'imperial');
    // 0.3 m are 0.984 ft, 20 m 65.617 ft: said a little inside.
    expect(readEntry('66', range)).toContain('between 1 and 65,6\u202fft');
    expect(readEntry('65,6', range)).toBeCloseTo(65.6 * 0.3048, 9);
    expect(readEntry('1', range)).toBeCloseTo(0.3048, 9);
  });
});

describe('a typed temperature', () => {
  it('is in the preferred scale, or in the one that is named', () => {
    const range = entry('temperature', -10, 50);
    expect(readEntry('20', range)).toBe(20);
    expect(readEntry('68 °F', range)).toBeCloseTo(20, 9);
    inLocale('en-US');
    expect(readEntry('68', range)).toBeCloseTo(20, 9);
    expect(readEntry('20C', range)).toBe(20);
    expect(readEntry('400', range)).toContain('between 14 and 122\u202f°F');
  });
});

describe('what is shown', () => {
  const locale = fc.record({
    tag: fc.constantFrom(...tags),
    units: fc.constantFrom('metric' as const, 'imperial' as const),
  });

  it('is read again as the value, but for its rounding', () => {
    const cases = fc.record({
      locale,
      measure: fc.constantFrom('number' as const, 'length' as const, 'temperature' as const),
      value: fc.double({ min: -90, max: 90, noNaN: true }),
      digits: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(cases, ({ locale: { tag, units }, measure, value, digits }) => {
        inLocale(tag, units);
        const read = readEntry(measures[measure].show(value, digits), entry(measure));
        // A tenth of an inch, or of a degree Fahrenheit, is the coarsest that is shown in a field.
        const coarse =
          units === 'imperial' && measure === 'length' ? 0.05 * metresPerInch : 0.5 / 10 ** digits;
        expect(Math.abs(Number(read) - value)).toBeLessThanOrEqual(coarse + 1e-9);
      }),
    );
  });

  it('stays the same text however often it is read and shown', () => {
    const cases = fc.record({ locale, value: fc.double({ min: -90, max: 90, noNaN: true }) });
    fc.assert(
      fc.property(cases, ({ locale: { tag, units }, value }) => {
        inLocale(tag, units);
        for (const measure of ['length', 'temperature'] as const) {
          const once = measures[measure].show(value, 2);
          const again = measures[measure].show(Number(readEntry(once, entry(measure))), 2);
          expect(again).toBe(once);
        }
      }),
    );
  });

  it('of a tape in sentences is within a quarter of an inch, and can be typed', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), (metres) => {
        inLocale('sv-SE', 'imperial');
        const read = parseLength(lengthText(metres), 'ft');
        expect(Math.abs(Number(read) - metres)).toBeLessThanOrEqual(0.25 * metresPerInch + 1e-9);
      }),
    );
  });

  it('keeps the capitals of channels within the name of what was typed into', () => {
    const entry = { label: 'Tape distance, FL to the microphone', unit: 'm', min: 0.2, max: 30 };
    expect(readEntry('abc', entry)).toContain('tape distance, FL to the microphone stays');
    expect(readEntry('abc', { ...entry, label: 'FL, trim' })).toContain('; FL, trim stays');
  });
});
