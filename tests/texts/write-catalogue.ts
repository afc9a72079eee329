import { createLocalizer, readTexts } from './localizer';

/**
 * Writes a file of all texts of the program for each tag into a folder (absolute), keeping what was
 * translated in the files that are there; gives their number. The file of "en" has the texts alone.
 */
export async function writeCatalogue(tags: readonly string[], folder: string): Promise<number> {
  const localizer = createLocalizer(tags, { written: folder, made: folder });
  const count = new Set(readTexts(localizer).map(({ name }) => name)).size;
  await localizer.writeInterchangeFiles();
  return count;
}
