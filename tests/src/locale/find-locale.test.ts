import { describe, expect, it } from 'vitest';
import { findLocale } from '../../../src/locale/find-locale';
import { noPreferences } from '../../../src/locale/locale';

/**
 * Units by CLDR 48, supplemental/measurementData.json: "001" metric, "US" and "LR" US; "MM" is "UK"
 * there, of which its lengths are taken. Likely regions by CLDR 48, supplemental/likelySubtags.json:
 * en is en-Latn-US, de is de-Latn-DE, sv is sv-Latn-SE.
 */
const facts = [
  [['en-GB'], 'en-GB', 'en-GB', 'metric'],
  [['en-US', 'en'], 'en-US', 'en-US', 'imperial'],
  [['en'], 'en', 'en-US', 'imperial'],
  [['en', 'en-AU'], 'en', 'en-AU', 'metric'],
  [['de-DE', 'de'], 'de-DE', 'en-DE', 'metric'],
  [['de'], 'de', 'en-DE', 'metric'],
  [['fr-FR'], 'fr-FR', 'en-FR', 'metric'],
  [['de-CH'], 'de-CH', 'en-CH', 'metric'],
  [['sv-SE', 'en-US'], 'sv-SE', 'en-SE', 'metric'],
  [['es-US'], 'es-US', 'en-US', 'imperial'],
  [['en-LR'], 'en-LR', 'en-LR', 'imperial'],
  [['my-MM'], 'my-MM', 'en-MM', 'imperial'],
  [['zh-Hant-TW'], 'zh-Hant-TW', 'en-TW', 'metric'],
  [[], 'en-GB', 'en-GB', 'metric'],
  [['no such tag!', 'de-AT'], 'de-AT', 'en-AT', 'metric'],
] as const;

describe('the locale of a browser', () => {
  for (const [languages, numbers, dates, units] of facts) {
    it(`that wants ${languages.join(', ') || 'nothing'}`, () => {
      const found = findLocale(noPreferences, languages);
      expect(found).toMatchObject({ language: 'en', numbers, units });
      // English that has no data for a region is that of the world.
      expect([dates, 'en-001']).toContain(found.dates);
    });
  }

  it('gives way to what was chosen, each for itself', () => {
    const units = findLocale({ ...noPreferences, units: 'metric' }, ['en-US']);
    expect(units).toMatchObject({
      language: 'en',
      numbers: 'en-US',
      dates: 'en-US',
      units: 'metric',
    });
    const numbers = findLocale({ ...noPreferences, numbers: 'de-DE' }, ['en-US']);
    expect(numbers).toMatchObject({
      language: 'en',
      numbers: 'de-DE',
      dates: 'en-DE',
      units: 'imperial',
    });
  });

  it('takes a damaged choice for none', () => {
    expect(findLocale({ ...noPreferences, numbers: '$' }, ['sv-SE']).numbers).toBe('sv-SE');
  });
});
