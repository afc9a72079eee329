import { crc32 as zlibCrc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../../dsp/signal/random';
import { crc32 } from '../../../../src/session/file/crc32';

describe('the checksum of ZIP entries', () => {
  it('has the check value of its catalogue entry for the digits 1 to 9', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('is 0 for nothing', () => {
    expect(crc32(new Uint8Array(0))).toBe(0);
  });

  it('agrees with zlib, in one piece and in several', () => {
    const random = seededRandom(5);
    for (const length of [1, 2, 255, 4096, 10_001]) {
      const bytes = Uint8Array.from({ length }, () => Math.floor(256 * random()));
      expect(crc32(bytes)).toBe(zlibCrc32(bytes));
      const cut = Math.floor(length * random());
      expect(crc32(bytes.subarray(cut), crc32(bytes.subarray(0, cut)))).toBe(zlibCrc32(bytes));
    }
  });
});
