import { describe, expect, it } from 'vitest';
import { dateText, utcText } from '../../../src/locale/date-text';
import {
  lengthIntervalText,
  lengthText,
  plainLengthText,
  shortLengthText,
  signedLengthText,
  smallLengthText,
  speedText,
  tinyLengthText,
} from '../../../src/locale/length-text';
import { dbText, durationText, hzText, numberText } from '../../../src/locale/number-text';
import { trimmedText } from '../../../src/locale/number-text';
import { temperatureText, warmthText } from '../../../src/locale/temperature-text';
import { inLocale, plainAfterEach } from './set-locale';

plainAfterEach();

/** With plain blanks, to be read here. */
const plain = (text: string): string => text.replace(/[\u202f\u00a0]/g, ' ');

/**
 * Decimal marks by CLDR 45, cldr-numbers-modern, main/<locale>/numbers.json, symbols of latn. The
 * dates by the patterns of English in each region, as ICU of this machine writes them.
 */
const facts = [
  ['en-GB', '.', '26 November 2026, 09:05'],
  ['en-US', '.', 'November 26, 2026, 9:05 AM'],
  ['de-DE', ',', '26 November 2026, 09:05'],
  ['fr-FR', ',', '26 November 2026, 09:05'],
  ['de-CH', '.', '26 November 2026, 09:05'],
  ['sv-SE', ',', '26 November 2026, 09:05'],
] as const;

describe('numbers and dates', () => {
  for (const [tag, mark, date] of facts) {
    it(`of ${tag}`, () => {
      inLocale(tag);
      expect(numberText(-1234.5, 1)).toBe(`\u22121234${mark}5`);
      expect(dbText(0.25, 2)).toBe(`0${mark}25\u202fdB`);
      expect(hzText(1250)).toBe(`1${mark}25\u202fkHz`);
      expect(hzText(2000)).toBe('2\u202fkHz');
      expect(trimmedText(2.5, 3)).toBe(`2${mark}5`);
      expect(plain(dateText(new Date(2026, 10, 26, 9, 5).toISOString()))).toBe(date);
      expect(plain(utcText('2026-11-26T09:05:00.000Z'))).toBe(`${date} UTC`);
    });
  }

  it('have digits from 0 to 9 and our calendar everywhere', () => {
    for (const tag of ['ar-EG', 'fa-IR', 'th-TH', 'hi-IN-u-nu-deva']) {
      inLocale(tag);
      expect(numberText(1234.5, 1)).toMatch(/^1234[.,]5$/);
      expect(dateText(new Date(2026, 10, 26, 9, 5).toISOString())).toMatch(/2026/);
    }
  });

  it('are never NaN', () => {
    for (const units of ['metric', 'imperial'] as const) {
      inLocale('de-DE', units);
      const write = [lengthText, shortLengthText, smallLengthText, tinyLengthText, speedText];
      const more = [numberText, trimmedText, signedLengthText, temperatureText, warmthText, hzText];
      for (const text of [...write, ...more, dbText, durationText]) {
        expect((text as (value: number) => string)(NaN)).toBe('–');
      }
      expect(dateText('soon')).toBe('a time nobody noted');
    }
  });
});

/** 1 ft is 0.3048 m and 1 in 0.0254 m by definition; every value here is worked out by hand. */
describe('lengths', () => {
  const cases = [
    [2.4, '2.40 m', '7 ft 10.5 in', '7.9 ft'],
    [2.4384, '2.44 m', '8 ft', '8.0 ft'],
    [0.3048, '0.30 m', '1 ft', '1.0 ft'],
    [0.1, '0.10 m', '4 in', '0.3 ft'],
    [3.6449, '3.64 m', '11 ft 11.5 in', '12.0 ft'],
    [3.655, '3.65 m', '12 ft', '12.0 ft'],
    [-1.5, '−1.50 m', '−4 ft 11 in', '−4.9 ft'],
    [-0.002, '0.00 m', '0 in', '0.0 ft'],
  ] as const;
  for (const [metres, metric, tape, short] of cases) {
    it(`of ${metres} m`, () => {
      expect(plain(lengthText(metres))).toBe(metric);
      expect(plain(shortLengthText(metres))).toBe(metric);
      inLocale('en-US');
      expect(plain(lengthText(metres))).toBe(tape);
      expect(plain(shortLengthText(metres))).toBe(short);
    });
  }

  it('are given, small, tiny, apart and between', () => {
    expect(plain(plainLengthText(0.25))).toBe('0.25 m');
    expect(plain(smallLengthText(0.25))).toBe('25 cm');
    expect(plain(tinyLengthText(0.012))).toBe('12 mm');
    expect(plain(signedLengthText(0.02))).toBe('+0.02 m');
    expect(lengthIntervalText([2.38, 2.42])).toBe('2.38–2.42');
    inLocale('de-DE', 'imperial');
    expect(plain(plainLengthText(0.25))).toBe('9,8 in');
    expect(plain(smallLengthText(0.25))).toBe('9,8 in');
    expect(plain(smallLengthText(0.5))).toBe('20 in');
    expect(plain(tinyLengthText(0.012))).toBe('0,47 in');
    expect(plain(signedLengthText(0.02))).toBe('+0,8 in');
    expect(lengthIntervalText([2.38, 2.42])).toBe('7,8–7,9');
  });
});

/** 20 °C are 68 °F, 100 °C 212 °F; 343.2 m/s are 1126.0 ft/s. */
describe('temperatures and speeds', () => {
  it('are converted, differences without the zero', () => {
    expect(plain(temperatureText(21.5))).toBe('21.5 °C');
    expect(plain(speedText(343.2))).toBe('343 m/s');
    inLocale('en-US');
    expect(plain(temperatureText(20, 0))).toBe('68 °F');
    expect(plain(temperatureText(100))).toBe('212.0 °F');
    expect(plain(warmthText(10))).toBe('18.0 °F');
    expect(plain(speedText(343.2))).toBe('1126 ft/s');
  });
});
