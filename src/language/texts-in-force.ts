import { configureLocalization, type LocaleModule } from '@lit/localize';
import { ownLanguage } from './languages';

/** Texts of another language than the program's own, as a page has them and sends its workers. */
export interface Texts {
  readonly tag: string;
  /** Tags of all languages but our own. */
  readonly tags: readonly string[];
  readonly texts: LocaleModule['templates'];
}

let inForce: Texts | null = null;
let set: ((tag: string) => Promise<void>) | null = null;

/**
 * Has `msg` give these texts, in force before the next task; those of the program itself for null.
 * The tags must be the same whenever it is called.
 */
export async function putTexts(texts: Texts | null): Promise<void> {
  inForce = texts;
  if (!texts && set === null) return;
  set ??= start(texts?.tags ?? []);
  await set(texts?.tag ?? ownLanguage.tag);
}

/** What a worker needs to speak the language in force; null where that is our own. */
export function textsToSend(): Texts | null {
  if (inForce === null) return null;
  // Workers say nothing with markup in it, which cannot be sent.
  const plain = Object.entries(inForce.texts).filter(
    ([, text]) => typeof text === 'string' || 'strTag' in text,
  );
  return { ...inForce, texts: Object.fromEntries(plain) };
}

function start(tags: readonly string[]): (tag: string) => Promise<void> {
  // Changes are told by an event on the window, which a worker has under another name.
  if (!('window' in globalThis)) Object.assign(globalThis, { window: globalThis });
  return configureLocalization({
    sourceLocale: ownLanguage.tag,
    targetLocales: [...tags],
    loadLocale: () => Promise.resolve({ templates: inForce?.texts ?? {} }),
  }).setLocale;
}
