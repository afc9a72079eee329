import { languages, ownLanguage } from './languages';
import { putTexts } from './texts-in-force';

const tags = languages.map(({ tag }) => tag);

/** All tags whose texts the app has, its own language first. */
export const languageTags = (): readonly string[] => [ownLanguage.tag, ...tags];

/**
 * On a page: loads the texts of a language and puts them in force. Rejects, and leaves those in
 * force, when they cannot be loaded or the app does not have them.
 */
export async function takeLanguage(tag: string): Promise<void> {
  const language = languages.find((one) => one.tag === tag);
  if (!language && tag !== ownLanguage.tag) throw new RangeError(`there are no texts in ${tag}`);
  const { templates: texts } = (await language?.load()) ?? {};
  await putTexts(texts ? { tag, tags, texts } : null);
  document.documentElement.lang = tag;
}
