import { ownLanguage } from '../language/languages';
import type { Locale, LocalePreferences, Units } from './locale';

/**
 * Regions that measure in feet (CLDR 48, supplemental/measurementData: measurementSystem "US" for US
 * and LR; Myanmar stands there as "UK", of which only its lengths are taken).
 */
const imperialRegions: readonly string[] = ['US', 'LR', 'MM'];

/**
 * The locale that preferences and a browser's languages, most wanted first, make together. Numbers
 * have the decimal mark of the person's own language, dates the texts' language and the region.
 * `texts` are the tags of the languages there are texts in, the program's own first.
 */
export function findLocale(
  preferences: LocalePreferences,
  languages: readonly string[],
  texts: readonly string[] = [ownLanguage.tag],
): Locale {
  const language = findLanguage([preferences.language ?? [], languages].flat(), texts);
  const browser = firstKnown(languages) ?? 'en-GB';
  const numbers = known(preferences.numbers) ?? browser;
  return {
    language,
    numbers,
    dates: datesTag(language, regionOf(numbers, languages)),
    units: preferences.units ?? unitsOf(regionOf(browser, languages)),
    space: '\u202f',
  };
}

/** The first language wanted that there are texts in, of any region; else the program's own. */
function findLanguage(wanted: readonly string[], texts: readonly string[]): string {
  for (const one of wanted) {
    if (texts.includes(one)) return one;
    if (known(one) === null) continue;
    const { language } = new Intl.Locale(one);
    if (texts.includes(language)) return language;
  }
  return texts[0] ?? ownLanguage.tag;
}

/** Units that are usual in a region. */
export function unitsOf(region: string): Units {
  return imperialRegions.includes(region) ? 'imperial' : 'metric';
}

/**
 * The region a tag names; else that of the first of the languages which is the same language and
 * names one; else the likeliest by CLDR ("de" is "de-Latn-DE").
 */
function regionOf(tag: string, languages: readonly string[]): string {
  const locale = new Intl.Locale(tag);
  if (locale.region) return locale.region;
  for (const one of languages) {
    if (known(one) === null) continue;
    const other = new Intl.Locale(one);
    if (other.language === locale.language && other.region) return other.region;
  }
  return locale.maximize().region ?? 'GB';
}

/** A language that has none of its own in a region is that of the world: English not America's. */
function datesTag(language: string, region: string): string {
  const tag = new Intl.Locale(language, { region }).toString();
  const { locale } = new Intl.DateTimeFormat(tag).resolvedOptions();
  return locale === tag ? tag : new Intl.Locale(language, { region: '001' }).toString();
}

function firstKnown(languages: readonly string[]): string | null {
  for (const one of languages) if (known(one) !== null) return one;
  return null;
}

/** A tag that is well formed and has data in this browser; null otherwise. */
function known(tag: string | null): string | null {
  if (tag === null) return null;
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0 ? tag : null;
  } catch {
    return null;
  }
}
