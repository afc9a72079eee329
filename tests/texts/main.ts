import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { createLocalizer, root } from './localizer';
import { writeCatalogue } from './write-catalogue';

const written = path.join(root, 'src/language/texts');
const made = path.join(root, 'src/language/made');

/**
 * `npm run texts [-- TAG]`: brings the files of texts up to date with the program, begins one for
 * TAG, and makes the modules of those that were translated.
 */
async function main(): Promise<void> {
  const found = (await readdir(written)).flatMap((name) => /^(.+)\.xlf$/.exec(name)?.[1] ?? []);
  const tags = [...new Set([...found, ...process.argv.slice(2)])].filter((tag) => tag !== 'en');
  for (const tag of tags) new Intl.Locale(tag);
  // Written anew, so that the order is that of the program.
  await rm(path.join(written, 'en.xlf'), { force: true });
  const count = await writeCatalogue(['en', ...tags], written);
  if (tags.length > 0) await createLocalizer(tags, { written, made }).build();
  console.log(`${count} texts written for ${['en', ...tags].join(', ')}.`);
}

await main();
