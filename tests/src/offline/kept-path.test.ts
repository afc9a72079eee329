import { describe, expect, it } from 'vitest';
import { keptPath } from '../../../src/offline/kept-path';

const scope = 'https://bench.example/tools/';
const asked = (url: string, method = 'GET'): string | null => keptPath({ method, url }, scope);

describe('keptPath', () => {
  it('gives the page for its folder, with any query and fragment', () => {
    expect(asked(scope)).toBe('index.html');
    expect(asked(`${scope}?from=home#probe/take`)).toBe('index.html');
    expect(asked(`${scope}index.html`)).toBe('index.html');
  });

  it('gives files by their path in the folder', () => {
    expect(asked(`${scope}assets/main-1a2b.js?v=2`)).toBe('assets/main-1a2b.js');
  });

  it('leaves to the network what lies elsewhere, and what is no GET', () => {
    expect(asked('https://bench.example/other/index.html')).toBeNull();
    expect(asked('https://bench.example.elsewhere/tools/index.html')).toBeNull();
    expect(asked('https://elsewhere.example/?https://bench.example/tools/')).toBeNull();
    expect(asked(scope, 'POST')).toBeNull();
    expect(asked(scope, 'HEAD')).toBeNull();
  });
});
