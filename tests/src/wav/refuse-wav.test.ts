import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isTrouble } from '../../../src/trouble';
import { readWav } from '../../../src/wav/read-wav';
import { writeWav } from '../../../src/wav/write-wav';
import { ascii, fmt, int16, joined, riff } from './wav-bytes';

const sound = int16(0, 16384, -32768);

describe('readWav, given what it cannot read,', () => {
  it.each<[string, Uint8Array, RegExp]>([
    ['an empty file', new Uint8Array(0), /file is empty/],
    ['text', Uint8Array.from(ascii('{"format":"leadline-take"}')), /begins with "\{"format?/],
    ['another kind of audio file', Uint8Array.from(ascii('fLaC0000')), /a FLAC file \(byte 0\)/],
    ['a picture file in RIFF', Uint8Array.from(ascii('RIFF0000WEBPVP8 ')), /not a WAV file/],
    ['a header alone', riff([]), /ends at byte 12 without its format/],
    ['a file without sound', riff([['fmt ', fmt()]]), /ends at byte 36 without its sound/],
    ['a file without a format', riff([['data', sound]]), /without its format/],
    [
      'an empty data chunk',
      riff([
        ['fmt ', fmt()],
        ['data', sound.subarray(0, 0)],
      ]),
      /no sound/,
    ],
    [
      'a truncated file',
      riff([
        ['fmt ', fmt()],
        ['data', sound, { claims: 5000 }],
      ]),
      /cut off: it claims 5000 bytes of sound from byte 44 on, and only 6 are there/,
    ],
    [
      'a short fmt chunk',
      riff([
        ['fmt ', fmt().subarray(0, 14)],
        ['data', sound],
      ]),
      /byte 20 has 14/,
    ],
    [
      'a compressed file',
      riff([
        ['fmt ', fmt({ tag: 0x11 })],
        ['data', sound],
      ]),
      /IMA ADPCM \(byte 20/,
    ],
    [
      'an unknown codec',
      riff([
        ['fmt ', fmt({ tag: 0x999 })],
        ['data', sound],
      ]),
      /number 2457/,
    ],
    [
      'an unknown sub-format',
      riff([
        ['fmt ', joined(fmt({ tag: 0xfffe }), new Uint8Array(24))],
        ['data', sound],
      ]),
      /byte 44/,
    ],
    [
      'an extensible format without its extension',
      riff([
        ['fmt ', fmt({ tag: 0xfffe })],
        ['data', sound],
      ]),
      /16 bytes where 40/,
    ],
    [
      'no channels',
      riff([
        ['fmt ', fmt({ channels: 0 })],
        ['data', sound],
      ]),
      /no channels \(byte 22\)/,
    ],
    [
      'a rate of 0',
      riff([
        ['fmt ', fmt({ rate: 0 })],
        ['data', sound],
      ]),
      /0 Hz \(byte 24\)/,
    ],
    [
      'floats of 16 bits',
      riff([
        ['fmt ', fmt({ tag: 3 })],
        ['data', sound],
      ]),
      /16 bits a sample, 1 channels, 2 bytes a frame \(byte 32\)/,
    ],
    [
      'sizes that contradict each other',
      riff([
        ['fmt ', fmt({ bits: 24, frameBytes: 2 })],
        ['data', sound],
      ]),
      /24 bits a sample, 1 channels, 2 bytes a frame/,
    ],
  ])('refuses %s and says what is wrong and where', (_what, bytes, finding) => {
    const result = readWav(bytes);
    expect(result).toMatchObject({ trouble: 'bad-wav' });
    expect(isTrouble(result) && result.sentence).toMatch(finding);
  });

  it.each([NaN, Infinity, -Infinity])('names the first sample that is %s', (value) => {
    const body = new Uint8Array(Float32Array.of(0, 0, 0, value, value, 0).buffer);
    const result = readWav(
      riff([
        ['fmt ', fmt({ tag: 3, bits: 32, channels: 2 })],
        ['data', body],
      ]),
    );
    expect(result).toMatchObject({ trouble: 'not-a-number' });
    expect(isTrouble(result) && result.sentence).toMatch(/sample 1 \(0\.000 s\) of channel 2/);
  });

  it('never throws, whatever bytes a header is damaged with', () => {
    const whole = writeWav({
      channels: [
        Float32Array.of(0.1, 0.2, 0.3),
        Float32Array.of(0, 0, 0),
        Float32Array.of(1, 1, 1),
      ],
      sampleRate: 48000,
      depth: 'float',
      channelMask: 7,
    });
    const damage = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { maxLength: 12 });
    fc.assert(
      fc.property(damage, fc.nat(whole.length), (hits, cut) => {
        const bytes = whole.slice(0, hits.length % 3 === 0 ? cut : whole.length);
        for (const [at, value] of hits) if (at < bytes.length) bytes[at] = value;
        const result = readWav(bytes);
        if (isTrouble(result)) return result.sentence.length > 20;
        return result.channels.every((samples) => samples.every(Number.isFinite));
      }),
      { seed: 7, numRuns: 4000 },
    );
  });

  it('never throws on arbitrary chunks', () => {
    const chunk = fc.tuple(
      fc.constantFrom('fmt ', 'data', 'ds64', 'LIST', 'fact'),
      fc.uint8Array({ maxLength: 44 }),
      fc.record({ claims: fc.nat(0xffffffff) }, { requiredKeys: [] }),
    );
    fc.assert(
      fc.property(
        fc.array(chunk, { maxLength: 6 }),
        fc.constantFrom('RIFF', 'RF64'),
        (chunks, kind) => {
          const result = readWav(riff(chunks, kind));
          return isTrouble(result) ? result.sentence.endsWith('.') : result.frames > 0;
        },
      ),
      { seed: 8, numRuns: 3000 },
    );
  });
});
