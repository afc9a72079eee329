import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const page = readFileSync(`${root}index.html`, 'utf8');

/** The page's content security policy, the sources of each directive. */
const policy = new Map(
  (/http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1] ?? '')
    .split(';')
    .map((directive) => directive.trim().split(/\s+/))
    .map(([name = '', ...sources]) => [name, sources] as const),
);

interface Manifest {
  readonly start_url: string;
  readonly scope: string;
  readonly display: string;
  readonly icons: readonly {
    readonly src: string;
    readonly sizes: string;
    readonly type: string;
    readonly purpose: string;
  }[];
}
const manifest = JSON.parse(readFileSync(`${root}public/leadline.webmanifest`, 'utf8')) as Manifest;

describe('the page’s content security policy', () => {
  it('allows nothing that it does not name', () => {
    expect(policy.get('default-src')).toEqual(["'none'"]);
    expect(policy.get('base-uri')).toEqual(["'none'"]);
    expect(policy.get('form-action')).toEqual(["'none'"]);
  });

  it('names no other origin, and lets no text become script', () => {
    const own = ["'self'", "'none'", 'blob:', 'data:', "'unsafe-inline'"];
    for (const [name, sources] of policy) {
      for (const source of sources) expect(own, name).toContain(source);
      if (name !== 'style-src-attr') expect(sources, name).not.toContain("'unsafe-inline'");
    }
    expect(policy.get('script-src')).toEqual(["'self'", 'blob:']);
    expect(policy.get('connect-src')).toEqual(["'self'"]);
  });

  it('stands before anything it could not hold back', () => {
    const stands = page.indexOf('Content-Security-Policy');
    for (const tag of ['<link', '<script', '<style']) {
      const first = page.indexOf(tag);
      expect(first === -1 || first > stands, tag).toBe(true);
    }
  });
});

describe('the installed app', () => {
  it('opens in a window of its own, within its folder wherever that lies', () => {
    expect(page).toContain('<link rel="manifest" href="./leadline.webmanifest" />');
    expect(manifest).toMatchObject({ start_url: './', scope: './', display: 'standalone' });
  });

  it('has icons for a home screen, for a start screen, and for any shape cut from them', () => {
    const drawn = manifest.icons.filter(({ type }) => type === 'image/png');
    expect(drawn.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
      '192x192 any',
      '512x512 any',
      '512x512 maskable',
    ]);
    for (const { src, sizes } of drawn) {
      const bytes = readFileSync(`${root}public/${src}`);
      // PNG (ISO/IEC 15948): eight bytes of signature, then IHDR with width and height.
      expect(bytes.subarray(1, 4).toString('latin1'), src).toBe('PNG');
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`, src).toBe(sizes);
    }
  });
});
