import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { build, type Plugin } from 'vite';
import { createLocalizer, root } from './localizer';

/** English with accents on its vowels: a tag that stands for such texts in CLDR ("pseudo-accents"). */
export const madeUpTag = 'en-XA';
/** Its name, as Settings offers it. */
export const madeUpName = 'Ŧest';

const accents: Readonly<Record<string, string>> = {
  ...{ a: 'á', e: 'é', i: 'í', o: 'ó', u: 'ú', y: 'ý' },
  ...{ A: 'Á', E: 'É', I: 'Í', O: 'Ó', U: 'Ú', Y: 'Ý' },
};

/**
 * The app as it is with one more language, added as a translator adds one: its file is written by
 * the program, translated, and made into a module. Gives the folder of the build.
 */
export async function buildWithMadeUpLanguage(): Promise<string> {
  const folder = path.join(root, 'tests/.out/made-up-language');
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  const localizer = createLocalizer([madeUpTag], { written: folder, made: folder });
  await localizer.writeInterchangeFiles();
  const file = path.join(folder, `${madeUpTag}.xlf`);
  await writeFile(file, translated(await readFile(file, 'utf8')));
  // One that has not read the files before they were translated.
  await createLocalizer([madeUpTag], { written: folder, made: folder }).build();
  // A test's own setting would make it a build for developers.
  process.env['NODE_ENV'] = 'production';
  const outDir = path.join(folder, 'dist');
  await build({
    root,
    configFile: path.join(root, 'vite.config.ts'),
    logLevel: 'warn',
    plugins: [withLanguage(path.join(folder, `${madeUpTag}.ts`))],
    build: { outDir, emptyOutDir: true },
  });
  return outDir;
}

/** An XLIFF file with a target for each source: the same pieces, the words accented. */
function translated(file: string): string {
  return file.replace(
    /<source>(.*?)<\/source>/gs,
    (whole, source: string) => `${whole}\n  <target>${accented(source)}</target>`,
  );
}

/** Letters between tags and entities, which stay. */
function accented(text: string): string {
  return text.replace(/<[^>]*>|&\w+;|[aeiouy]/gi, (piece) => accents[piece] ?? piece);
}

function withLanguage(module: string): Plugin {
  return {
    name: 'with-made-up-language',
    enforce: 'pre',
    transform: (code, id) =>
      id.endsWith('/src/language/languages.ts')
        ? code.replace(
            /languages: readonly Language\[\] = \[\]/,
            `languages: readonly Language[] = [{ tag: '${madeUpTag}', name: '${madeUpName}', load: () => import(${JSON.stringify(module)}) }]`,
          )
        : undefined,
  };
}
