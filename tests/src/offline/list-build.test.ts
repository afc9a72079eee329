import { describe, expect, it } from 'vitest';
import { listBuild, nameBuild, type BuiltFile } from '../../../src/offline/list-build';

const file = (path: string, text: string): BuiltFile => ({
  path,
  bytes: new TextEncoder().encode(text),
});
const build = [
  file('index.html', 'abc'),
  file('assets/reading-worker-1a2b.js', ''),
  file('processors/sample-7.json', '{}'),
];

// SHA-256 of "abc": FIPS 180-2, appendix B.1; of nothing: NIST CAVP SHA256ShortMsg, Len = 0. In base64.
const hashOfAbc = 'ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=';
const hashOfNothing = '47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=';

describe('listBuild', () => {
  it('lists every file once, in order of the paths, with the hash of its bytes', () => {
    const listed = listBuild(build);
    expect(listed.map(({ path }) => path)).toEqual([
      'assets/reading-worker-1a2b.js',
      'index.html',
      'processors/sample-7.json',
    ]);
    expect(listed[0]?.sha256).toBe(hashOfNothing);
    expect(listed[1]?.sha256).toBe(hashOfAbc);
  });

  it('leaves out the service worker, the README picture, old fonts and source maps', () => {
    const others = ['service-worker.js', 'leadline.png', 'assets/face-1.woff', 'assets/a.js.map'];
    const kept = ['assets/face-1.woff2', 'assets/service-worker-helper.js', 'icon-192.png'];
    const listed = listBuild([...others, ...kept].map((path) => file(path, path)));
    expect(listed.map(({ path }) => path)).toEqual(kept);
  });
});

describe('nameBuild', () => {
  it('is eight hex digits, whatever the order of the files', () => {
    expect(nameBuild(build)).toMatch(/^[0-9a-f]{8}$/);
    expect(nameBuild([...build].reverse())).toBe(nameBuild(build));
  });

  it('changes with a byte, a path, a file more, and bytes that move to the next file', () => {
    const names = [
      build,
      build.map((one) => (one.path === 'index.html' ? file('index.html', 'abd') : one)),
      build.map((one) => (one.path === 'index.html' ? file('index.htm', 'abc') : one)),
      [...build, file('icon.svg', '')],
      [file('a', 'xy'), file('b', 'z')],
      [file('a', 'x'), file('b', 'yz')],
    ].map(nameBuild);
    expect(new Set(names).size).toBe(names.length);
  });
});
