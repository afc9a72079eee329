import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ProgramMessage } from '@lit/localize-tools/lib/messages.js';
import { RuntimeLitLocalizer } from '@lit/localize-tools/lib/modes/runtime.js';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** Where the texts of each language are written by translators, and made into modules. */
export interface TextFolders {
  /** One XLIFF 1.2 file a language, named by its tag. */
  readonly written: string;
  /** One module a language. */
  readonly made: string;
}

/** Reads the texts out of the program, and the languages out of `folders` (both absolute). */
export function createLocalizer(
  tags: readonly string[],
  { written, made }: TextFolders,
): RuntimeLitLocalizer {
  return new RuntimeLitLocalizer({
    baseDir: root,
    resolve: (name) => path.resolve(root, name),
    sourceLocale: 'en',
    targetLocales: [...tags],
    tsConfig: 'tests/texts/tsconfig.json',
    interchange: { format: 'xliff', xliffDir: written },
    output: { mode: 'runtime', outputDir: made, language: 'ts' },
  } as ConstructorParameters<typeof RuntimeLitLocalizer>[0]);
}

/** All texts of the app, in the order of their files. Throws when one cannot be taken out. */
export function readTexts(localizer: RuntimeLitLocalizer): ProgramMessage[] {
  const { messages, errors } = localizer.extractSourceMessages();
  const first = errors[0];
  if (!first) return messages;
  const where = first.file?.fileName ?? 'a file';
  throw new Error(`${where}: ${JSON.stringify(first.messageText)}`);
}
