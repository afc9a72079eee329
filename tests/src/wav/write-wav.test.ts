import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../dsp/signal/random';
import { isTrouble } from '../../../src/trouble';
import { readWav } from '../../../src/wav/read-wav';
import { wavHeader } from '../../../src/wav/wav-header';
import { joinPieces, wavPieces, writeWav } from '../../../src/wav/write-wav';
import { expectClose } from '../../close';

const tone = (length: number, period: number): Float32Array =>
  Float32Array.from({ length }, (_, n) => 0.9 * Math.sin((2 * Math.PI * n) / period));

describe('writeWav', () => {
  it.each([
    [16, 2 ** -16],
    [24, 2 ** -24],
    [32, 2 ** -24],
    ['float', 0],
  ] as const)('brings samples back within half a step at depth %s', (depth, tolerance) => {
    const channels = [tone(1000, 48), tone(1000, 7.3), tone(1000, 333)];
    const wav = readWav(writeWav({ channels, sampleRate: 96000, depth, channelMask: 7 }));
    if (isTrouble(wav)) return expect.fail(wav.sentence);
    expect(wav).toMatchObject({ sampleRate: 96000, frames: 1000, channelMask: 7 });
    expectClose(wav.channels, channels, tolerance);
  });

  it('holds integers at full scale instead of wrapping round', () => {
    const channels = [Float32Array.of(1, -1, 1.5, -1.5)];
    for (const depth of [16, 24, 32] as const) {
      const wav = readWav(writeWav({ channels, sampleRate: 48000, depth, channelMask: 0 }));
      if (isTrouble(wav)) return expect.fail(wav.sentence);
      expectClose(wav.channels, [[1, -1, 1, -1]], 2 ** -15);
    }
  });

  it('pads an odd number of sound bytes and does not count the padding as sound', () => {
    const bytes = writeWav({
      channels: [Float32Array.of(0.5)],
      sampleRate: 48000,
      depth: 24,
      channelMask: 0,
    });
    const view = new DataView(bytes.buffer);
    expect(bytes.length).toBe(80 + 4);
    expect(view.getUint32(4, true)).toBe(bytes.length - 8);
    expect(view.getUint32(76, true)).toBe(3);
  });

  it('writes the same bytes in pieces as whole', () => {
    const channels = [tone(40000, 48), tone(40000, 100)];
    const spec = { channelCount: 2, frames: 40000, sampleRate: 48000, channelMask: 3 };
    const pieces = [
      ...wavPieces({ ...spec, depth: 24 }, (channel, start, into) => {
        into.set(channels[channel]?.subarray(start, start + into.length) ?? []);
      }),
    ];
    expect(pieces.length).toBeGreaterThan(3);
    const whole = writeWav({ channels, sampleRate: 48000, depth: 24, channelMask: 3 });
    expect(Buffer.compare(joinPieces(pieces), whole)).toBe(0);
  });

  it('dithers with triangular noise: error without bias, of variance 1/4 step², alike for every level', () => {
    const frames = 200000;
    const step = 2 ** -15;
    for (const level of [0, 0.25, 0.5]) {
      const spec = { channelCount: 1, frames, sampleRate: 48000, channelMask: 0 };
      const source = (_channel: number, _start: number, into: Float32Array) =>
        void into.fill(level * step);
      const pieces = wavPieces({ ...spec, depth: 16 }, source, seededRandom(5));
      const wav = readWav(joinPieces([...pieces]));
      if (isTrouble(wav)) return expect.fail(wav.sentence);
      const errors = [...(wav.channels[0] ?? [])].map((value) => value / step - level);
      const mean = errors.reduce((sum, error) => sum + error, 0) / frames;
      const variance = errors.reduce((sum, error) => sum + error * error, 0) / frames;
      expectClose(mean, 0, 0.006, 'five standard errors of the mean');
      expectClose(variance, 1 / 4, 0.01, 'rounding 1/12 and triangular noise 2/12');
    }
  });

  it('refuses what no WAV can hold, and says the value', () => {
    const spec = {
      channelCount: 2,
      frames: 10,
      sampleRate: 48000,
      depth: 24,
      channelMask: 3,
    } as const;
    expect(() => wavHeader({ ...spec, channelCount: 0 })).toThrow(/channelCount .* got 0/);
    expect(() => wavHeader({ ...spec, sampleRate: 44100.5 })).toThrow(/sampleRate .* got 44100\.5/);
    expect(() => wavHeader({ ...spec, frames: 2 ** 31 })).toThrow(RangeError);
    expect(() => wavHeader({ ...spec, channelMask: 7 })).toThrow(/0x7 names 3 of 2 channels/);
    const sound = { sampleRate: 48000, depth: 24, channelMask: 0 } as const;
    const uneven = [new Float32Array(3), new Float32Array(4)];
    expect(() => writeWav({ ...sound, channels: uneven })).toThrow(
      /channel 1 must have 3 .* got 4/,
    );
    expect(() => writeWav({ ...sound, channels: [Float32Array.of(0, NaN)] })).toThrow(
      /sample 1 of channel 0 .* got NaN/,
    );
  });
});
