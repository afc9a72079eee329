import { findLocale } from './find-locale';
import { noPreferences, type Locale, type LocalePreferences } from './locale';
import { setLocale } from './locale-in-force';

const key = 'leadline-locale';
/** What was chosen last where the browser stores nothing. */
let inHand = noPreferences;

/** What was chosen on this machine; whatever is damaged there counts as not chosen. */
export function readPreferences(): LocalePreferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return inHand;
    const { units, numbers } = kept as Partial<Record<keyof LocalePreferences, unknown>>;
    return {
      ...noPreferences,
      units: units === 'metric' || units === 'imperial' ? units : null,
      numbers: typeof numbers === 'string' ? numbers : null,
    };
  } catch {
    return inHand;
  }
}

/** Keeps a choice on this machine and puts it in force at once. */
export function choosePreferences(preferences: LocalePreferences): void {
  inHand = preferences;
  try {
    localStorage.setItem(key, JSON.stringify(preferences));
  } catch {
    // A browser that stores nothing follows the choice until it is closed.
  }
  setLocale(localeOf(preferences));
}

/** Puts in force what was chosen on this machine, and follows what other tabs choose. */
export function startLocale(): void {
  setLocale(localeOf(readPreferences()));
  addEventListener('storage', (event) => {
    if (event.key === key || event.key === null) setLocale(localeOf(readPreferences()));
  });
}

/** The locale that preferences make in this browser. */
export function localeOf(preferences: LocalePreferences): Locale {
  return findLocale(preferences, navigator.languages);
}
