import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { firstScripts, importsOf, scriptsOf, type WeighedScript } from './first-script';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
/** Bytes by gzip. */
const most = 160_000;

interface FirstModule {
  readonly module: string;
  readonly bytes: number;
}

/** What to look at when there is too much of it. */
function inWords(scripts: readonly WeighedScript[], total: number): string {
  const report = readFileSync(path.join(dist, '.vite/first-script.json'), 'utf8');
  const modules = (JSON.parse(report) as FirstModule[]).slice(0, 20);
  return [
    `The page begins with ${total} bytes of script, compressed; ${most} are allowed.`,
    ...scripts.map(({ file, bytes }) => `${bytes} compressed: ${file}`),
    'The largest modules in it, before compression:',
    ...modules.map(({ module, bytes }) => `${bytes}: ${module}`),
  ].join('\n');
}

describe('the script the page begins with', () => {
  it(`weighs at most ${most} bytes`, () => {
    const scripts = firstScripts(dist);
    const total = scripts.reduce((sum, { bytes }) => sum + bytes, 0);
    expect(scripts.length).toBeGreaterThan(0);
    expect(total, inWords(scripts, total)).toBeLessThanOrEqual(most);
  });

  it('is found by what the page names and preloads', () => {
    const page =
      '<link rel="stylesheet" href="./a.css"><script type="module" src="./assets/one.js"></script>' +
      '<link rel="modulepreload" crossorigin href="./assets/two.js">';
    expect(scriptsOf(page)).toEqual(['assets/one.js', 'assets/two.js']);
  });

  it('goes on with what is imported at once, and not with what comes later', () => {
    const code =
      'import{a as b}from"./a.js";import"./b.js";export*from"./c.js";export{d}from"./d.js";' +
      'const e=()=>import("./e.js");export{b,e};';
    expect(importsOf(code)).toEqual(['./a.js', './b.js', './c.js', './d.js']);
  });
});
