import { describe, expect, it } from 'vitest';
import { captureFromWav } from '../../../src/rig/recording-capture';
import { isTrouble } from '../../../src/trouble';
import type { WavDepth } from '../../../src/wav/wav-file';
import { writeWav } from '../../../src/wav/write-wav';
import { expectClose } from '../../close';
import { shortTake } from './short-take';

const startedAt = '2030-01-02T03:04:05.000Z';
const seconds = shortTake.lengthSamples / 48000;

describe('captureFromWav', () => {
  it.each([44100, 48000, 88200, 96000, 176400, 192000])('takes a recording at %i Hz', (rate) => {
    const samples = hum(seconds * rate);
    expect(capture([samples], { rate })).toMatchObject({
      sampleRate: rate,
      samples: { length: samples.length },
      startedAt,
      rig: 'recording',
      simulated: false,
      gaps: [],
    });
  });

  it.each([16, 24, 32, 'float'] as const)('brings the samples back at depth %s', (depth) => {
    const samples = hum(seconds * 48000);
    const result = capture([samples], { depth });
    if (isTrouble(result)) return expect.fail(result.sentence);
    expectClose(result.samples, samples, 2 ** -16);
    expect(result.notes).toEqual([
      `Recording: 48000 Hz, ${depth === 'float' ? '32-bit float' : `${depth}-bit`}`,
    ]);
  });

  it('takes the chosen one of several channels', () => {
    const samples = hum(seconds * 48000);
    const result = capture([new Float32Array(samples.length), samples], { channel: 2 });
    if (isTrouble(result)) return expect.fail(result.sentence);
    expectClose(result.samples, samples, 2 ** -24);
    expect(result.notes).toEqual(['Recording: 48000 Hz, 24-bit, channel 2 of 2']);
  });

  it('refuses several channels when none was chosen, and tells which carry sound', () => {
    const silent = new Float32Array(seconds * 48000);
    const live = hum(seconds * 48000);
    refuses(
      capture([silent, live]),
      'wrong-channels',
      /2 channels .* only channel 2 \(peak −20\.0 dB\)/,
    );
    refuses(capture([live, silent, live]), 'wrong-channels', /channels 1 .*, 3 .* carry sound/);
    refuses(capture([silent, silent]), 'wrong-channels', /none of them carries sound/);
  });

  it('finds the live channel when asked to, and refuses when two differ', () => {
    const live = hum(seconds * 48000);
    const silent = new Float32Array(live.length);
    const channel = 'the live one';
    expect(capture([silent, live], { channel })).toMatchObject({
      notes: ['Recording: 48000 Hz, 24-bit, channel 2 of 2'],
    });
    expect(capture([live, live], { channel })).toMatchObject({
      notes: ['Recording: 48000 Hz, 24-bit, channel 1 of 2'],
    });
    const other = live.map((value) => value / 2);
    refuses(capture([live, other], { channel }), 'wrong-channels', /channels 1 .*, 2 .* carry/);
    refuses(capture([silent, silent], { channel }), 'wrong-channels', /none of them/);
  });

  it('refuses a channel that is not there', () => {
    const live = hum(seconds * 48000);
    refuses(capture([live, live], { channel: 3 }), 'wrong-channels', /no channel 3\. .* 1 to 2/);
    refuses(capture([live], { channel: 2 }), 'wrong-channels', /one channel and no channel 2/);
  });

  it.each([8000, 16000, 22050, 32000, 44099])('refuses %i Hz for the lost treble', (rate) => {
    refuses(capture([hum(seconds * rate)], { rate }), 'wrong-rate', /below 44100 Hz/);
  });

  it.each([44101, 50000, 384000])('refuses %i Hz as no rate of a recorder', (rate) => {
    refuses(capture([hum(1000)], { rate }), 'wrong-rate', /no recorder uses it/);
  });

  it('refuses silence, and names the channel that is silent', () => {
    const silent = new Float32Array(seconds * 48000);
    refuses(
      capture([silent]),
      'silence',
      /^The recording is silent: every sample of its \d+\.\d s/,
    );
    refuses(
      capture([silent, hum(9)].slice(0, 1), { channel: 1 }),
      'silence',
      /recording is silent/,
    );
    const live = hum(silent.length);
    refuses(capture([live, silent], { channel: 2 }), 'silence', /^Channel 2 of the recording/);
  });

  it('refuses a recording shorter than the take, and says both lengths', () => {
    refuses(capture([hum(5 * 48000)]), 'too-short', /lasts 5\.0 s and the take 1\d\.\d s/);
  });

  it('takes a recording that lacks only the silence before and after the take', () => {
    const { markStarts, mark } = shortTake;
    const needed = (markStarts.at(-1) ?? 0) + mark.lengthSamples - (markStarts[0] ?? 0);
    expect(isTrouble(capture([hum(needed)]))).toBe(false);
    refuses(capture([hum(needed * 0.99)]), 'too-short', /its end is missing/);
  });

  it('hands on what is wrong with the file', () => {
    const result = captureFromWav(Uint8Array.of(1, 2, 3), shortTake, { startedAt });
    refuses(result, 'bad-wav', /not a WAV file/);
  });
});

function capture(
  channels: Float32Array[],
  options: { rate?: number; depth?: WavDepth; channel?: number | 'the live one' } = {},
) {
  const { rate = 48000, depth = 24, channel } = options;
  const bytes = writeWav({ channels, sampleRate: rate, depth, channelMask: 0 });
  return captureFromWav(bytes, shortTake, { startedAt, ...(channel ? { channel } : {}) });
}

/** Something that sounds, with its peak at −20 dB. */
function hum(length: number): Float32Array {
  return Float32Array.from(
    { length: Math.round(length) },
    (_, n) => 0.1 * Math.sin(n * (Math.PI / 8)),
  );
}

function refuses(result: unknown, kind: string, finding: RegExp): void {
  expect(result).toMatchObject({ trouble: kind });
  expect(isTrouble(result) && result.sentence).toMatch(finding);
}
