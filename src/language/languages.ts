import type { LocaleModule } from '@lit/localize';

/** A language the texts were translated into. */
export interface Language {
  /** BCP 47 tag, and the name of its file in `texts`. */
  readonly tag: string;
  /** Its name in itself. */
  readonly name: string;
  /** Its texts, as `npm run texts` makes them: `() => import('./made/<tag>')`. */
  readonly load: () => Promise<LocaleModule>;
}

/** The language the program is written in. */
export const ownLanguage = { tag: 'en', name: 'English' } as const;

/** All others; a line is all that the program needs to know of one. */
export const languages: readonly Language[] = [];
