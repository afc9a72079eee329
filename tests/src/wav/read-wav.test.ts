import { describe, expect, it } from 'vitest';
import { isTrouble } from '../../../src/trouble';
import { readWav } from '../../../src/wav/read-wav';
import type { WavFile } from '../../../src/wav/wav-file';
import { ascii, extension, fmt, int16, joined, riff, u32 } from './wav-bytes';

const sound = int16(0, 16384, -32768);
const soundSamples = [0, 0.5, -1];

describe('readWav', () => {
  it('finds the samples of a plain 16-bit file', () => {
    const wav = readable(
      riff([
        ['fmt ', fmt()],
        ['data', sound],
      ]),
    );
    expect(wav).toMatchObject({ sampleRate: 48000, coding: 'integer', bits: 16, frames: 3 });
    expect(wav.channelMask).toBeNull();
    expect(samplesOf(wav)).toEqual([soundSamples]);
  });

  it('takes 8-bit samples as unsigned', () => {
    const body = Uint8Array.from([128, 192, 0]);
    expect(
      samplesOf(
        readable(
          riff([
            ['fmt ', fmt({ bits: 8 })],
            ['data', body],
          ]),
        ),
      ),
    ).toEqual([[0, 0.5, -1]]);
  });

  it('takes 24-bit samples with their sign', () => {
    const body = Uint8Array.from([0, 0, 0x40, 0xff, 0xff, 0xff, 0, 0, 0x80]);
    expect(
      samplesOf(
        readable(
          riff([
            ['fmt ', fmt({ bits: 24 })],
            ['data', body],
          ]),
        ),
      ),
    ).toEqual([[0.5, -(2 ** -23), -1]]);
  });

  it('takes 24 bits in 4 bytes as left-justified', () => {
    const format = fmt({ tag: 0xfffe, bits: 32 });
    const body = Uint8Array.from([0, 0, 0, 0x40]);
    const wav = readable(
      riff([
        ['fmt ', joined(format, extension(1, 24, 4))],
        ['data', body],
      ]),
    );
    expect(wav).toMatchObject({ bits: 24, channelMask: 4 });
    expect(samplesOf(wav)).toEqual([[0.5]]);
  });

  it('takes 32-bit and 64-bit floats, beyond full scale too', () => {
    const float32 = new Uint8Array(Float32Array.of(0.25, -1.5).buffer);
    const float64 = new Uint8Array(Float64Array.of(0.25, -1.5).buffer);
    const format = (bits: number) => fmt({ tag: 3, bits });
    expect(
      samplesOf(
        readable(
          riff([
            ['fmt ', format(32)],
            ['data', float32],
          ]),
        ),
      ),
    ).toEqual([[0.25, -1.5]]);
    expect(
      samplesOf(
        readable(
          riff([
            ['fmt ', format(64)],
            ['data', float64],
          ]),
        ),
      ),
    ).toEqual([[0.25, -1.5]]);
  });

  it('takes channels apart', () => {
    const body = int16(16384, -16384, 8192, -8192);
    expect(
      samplesOf(
        readable(
          riff([
            ['fmt ', fmt({ channels: 2 })],
            ['data', body],
          ]),
        ),
      ),
    ).toEqual([
      [0.5, 0.25],
      [-0.5, -0.25],
    ]);
  });

  it('steps over odd chunks, notes and text before and after the sound', () => {
    const note = Uint8Array.from(ascii('INFOx'));
    const wav = riff([
      ['JUNK', Uint8Array.of(1, 2, 3)],
      ['fmt ', fmt()],
      ['LIST', note],
      ['data', sound],
      ['LIST', note],
    ]);
    expect(samplesOf(readable(wav))).toEqual([soundSamples]);
  });

  it('finds the sound when the padding byte of an odd chunk was forgotten', () => {
    const wav = riff([
      ['fmt ', fmt()],
      ['LIST', Uint8Array.of(1, 2, 3), { unpadded: true }],
      ['data', sound],
    ]);
    expect(samplesOf(readable(wav))).toEqual([soundSamples]);
  });

  it('accepts an odd data chunk with and without its padding byte', () => {
    const body = Uint8Array.of(128, 192, 0);
    for (const unpadded of [false, true]) {
      const wav = riff([
        ['fmt ', fmt({ bits: 8 })],
        ['data', body, { unpadded }],
      ]);
      expect(readable(wav).frames).toBe(3);
    }
  });

  it.each([0, 0xffffffff, 0x7ffff000, 0x80000000])(
    'reads to the end when a streaming recorder left the length %i',
    (claims) => {
      const wav = riff([
        ['fmt ', fmt()],
        ['data', sound, { claims }],
      ]);
      expect(samplesOf(readable(wav))).toEqual([soundSamples]);
    },
  );

  it.each(['RF64', 'BW64'])('takes the 64-bit length of %s', (kind) => {
    const sizes = Uint8Array.from([
      ...u32(99),
      ...u32(0),
      ...u32(4),
      ...u32(0),
      ...Array(12).fill(0),
    ]);
    const wav = riff(
      [
        ['ds64', sizes],
        ['fmt ', fmt()],
        ['data', sound, { claims: 0xffffffff }],
      ],
      kind,
    );
    expect(samplesOf(readable(wav))).toEqual([soundSamples.slice(0, 2)]);
  });

  it('reads a file that lies at an offset in its buffer', () => {
    const wav = riff([
      ['fmt ', fmt()],
      ['data', sound],
    ]);
    const buffer = new Uint8Array(wav.length + 7);
    buffer.set(wav, 5);
    expect(samplesOf(readable(buffer.subarray(5, 5 + wav.length)))).toEqual([soundSamples]);
  });

  it('leaves a last incomplete frame away', () => {
    const wav = riff([
      ['fmt ', fmt({ channels: 2 })],
      ['data', sound],
    ]);
    expect(samplesOf(readable(wav))).toEqual([[0], [0.5]]);
  });
});

function readable(bytes: Uint8Array): WavFile {
  const wav = readWav(bytes);
  if (isTrouble(wav)) return expect.fail(wav.sentence);
  return wav;
}

function samplesOf(wav: WavFile): number[][] {
  return wav.channels.map((samples) => [...samples]);
}
