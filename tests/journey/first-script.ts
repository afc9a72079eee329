import { readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { parseAst } from 'vite';

/** A script file of a build and what it weighs by gzip. */
export interface WeighedScript {
  readonly file: string;
  readonly bytes: number;
}

/**
 * The scripts a page fetches before anything is asked of it: those it names or preloads, and all
 * that these import at once, one after another. Read from what was built, whatever built it.
 */
export function firstScripts(folder: string): WeighedScript[] {
  const page = readFileSync(path.join(folder, 'index.html'), 'utf8');
  const found = new Map<string, WeighedScript>();
  const add = (file: string): void => {
    if (found.has(file)) return;
    const code = readFileSync(path.join(folder, file), 'utf8');
    found.set(file, { file, bytes: gzipSync(code).length });
    for (const source of importsOf(code)) add(path.posix.join(path.posix.dirname(file), source));
  };
  for (const file of scriptsOf(page)) add(file);
  return [...found.values()];
}

/** Paths of the scripts a page names or preloads, from its folder. */
export function scriptsOf(page: string): string[] {
  const scripts = [...page.matchAll(/<script\b[^>]*\bsrc="([^"]+)"/g)];
  const preloads = [...page.matchAll(/<link\b[^>]*\brel="modulepreload"[^>]*>/g)].flatMap(
    ([link]) => [...link.matchAll(/\bhref="([^"]+)"/g)],
  );
  return [...scripts, ...preloads].map(([, file]) => path.posix.normalize(file ?? ''));
}

/** What a module imports at once, or exports from another. */
export function importsOf(code: string): string[] {
  return parseAst(code, { sourceType: 'module' }).body.flatMap((statement) => {
    switch (statement.type) {
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
        return [statement.source.value];
      case 'ExportNamedDeclaration':
        return statement.source ? [statement.source.value] : [];
      default:
        return [];
    }
  });
}
