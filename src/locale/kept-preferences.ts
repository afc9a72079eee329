import { languageTags, takeLanguage } from '../language/take-language';
import { ownLanguage } from '../language/languages';
import { findLocale } from './find-locale';
import { noPreferences, type Locale, type LocalePreferences } from './locale';
import { localeInForce, setLocale } from './locale-in-force';

const key = 'leadline-locale';
/** What was chosen last where the browser stores nothing. */
let inHand = noPreferences;

/** What was chosen on this machine; whatever is damaged there counts as not chosen. */
export function readPreferences(): LocalePreferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return inHand;
    const { language, units, numbers } = kept as Partial<Record<keyof LocalePreferences, unknown>>;
    return {
      language: typeof language === 'string' ? language : null,
      units: units === 'metric' || units === 'imperial' ? units : null,
      numbers: typeof numbers === 'string' ? numbers : null,
    };
  } catch {
    return inHand;
  }
}

/**
 * Keeps a choice on this machine and puts it in force once its texts are there. False, and nothing
 * kept or changed, when they cannot be loaded.
 */
export async function choosePreferences(preferences: LocalePreferences): Promise<boolean> {
  if (!(await putInForce(preferences))) return false;
  inHand = preferences;
  try {
    localStorage.setItem(key, JSON.stringify(preferences));
  } catch {
    // A browser that stores nothing follows the choice until it is closed.
  }
  return true;
}

/**
 * Puts in force what was chosen on this machine, and follows what other tabs choose. Where the
 * texts do not come, the program's own stand.
 */
export async function startLocale(): Promise<void> {
  addEventListener('storage', (event) => {
    if (event.key === key || event.key === null) void putInForce(readPreferences());
  });
  const kept = readPreferences();
  if (!(await putInForce(kept))) setLocale({ ...localeOf(kept), language: ownLanguage.tag });
}

/** The locale that preferences make in this browser. */
export function localeOf(preferences: LocalePreferences): Locale {
  return findLocale(preferences, navigator.languages, languageTags());
}

async function putInForce(preferences: LocalePreferences): Promise<boolean> {
  const locale = localeOf(preferences);
  if (locale.language !== localeInForce().language) {
    try {
      await takeLanguage(locale.language);
    } catch {
      return false;
    }
  }
  setLocale(locale);
  return true;
}
