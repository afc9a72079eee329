import { describe, expect, it } from 'vitest';
import { versionWords } from '../../../src/offline/version-words';

describe('versionWords', () => {
  it('says version and build', () => {
    expect(versionWords('0.1.0+1a2b3c4d')).toBe('Version 0.1.0, build 1a2b3c4d');
    expect(versionWords('2.10.3-beta.1+00000000')).toBe('Version 2.10.3-beta.1, build 00000000');
  });

  it('says of a page that was not built that it is in development', () => {
    for (const version of [null, '', 'development', '0.1.0', '0.1.0+', '0.1.0+xyz']) {
      expect(versionWords(version)).toBe('A version in development');
    }
  });
});
