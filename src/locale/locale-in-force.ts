import { plainLocale, type Locale } from './locale';

let inForce: Locale = plainLocale;
const listeners = new Set<() => void>();

/** The locale that all texts are written by; the very same object until it changes. */
export function localeInForce(): Locale {
  return inForce;
}

/** Puts a locale in force and tells who follows it, unless it is the one in force already. */
export function setLocale(locale: Locale): void {
  if (isSame(locale, inForce)) return;
  inForce = locale;
  for (const listener of [...listeners]) listener();
}

/** What a function makes when all it says is metric, with a decimal point: for files of machines. */
export function inPlainLocale<Made>(make: () => Made): Made {
  const before = inForce;
  inForce = plainLocale;
  try {
    return make();
  } finally {
    inForce = before;
  }
}

/** Calls the listener after each change, in the order in which they were added; gives the way out. */
export function onLocaleChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

function isSame(one: Locale, other: Locale): boolean {
  return (
    one.language === other.language &&
    one.numbers === other.numbers &&
    one.dates === other.dates &&
    one.units === other.units &&
    one.space === other.space
  );
}
