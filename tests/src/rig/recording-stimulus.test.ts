import { describe, expect, it } from 'vitest';
import { takeFiles, takeWavSpec } from '../../../src/rig/recording-stimulus';
import { parseSchedule } from '../../../src/schema/parse-schedule';
import { renderChannel } from '../../../src/take/render';
import { isTrouble } from '../../../src/trouble';
import { readWav } from '../../../src/wav/read-wav';
import type { WavDepth } from '../../../src/wav/wav-file';
import { joinPieces } from '../../../src/wav/write-wav';
import { expectClose } from '../../close';
import { shortTake, shortTakeOf } from './short-take';

describe('takeFiles', () => {
  it('saves the schedule beside the sound', () => {
    const files = takeFiles(shortTake);
    expect(files.map((file) => file.name)).toEqual(['take.wav', 'take.json']);
    expect(parseSchedule(new TextDecoder().decode(bytesOf('take.json')))).toEqual(shortTake);
  });

  it.each([
    [24, 2 ** -24],
    [32, 2 ** -24],
    ['float', 0],
    [16, 1.5 * 2 ** -15],
  ] as const)(
    'plays on each channel what the schedule renders, at depth %s',
    (depth, tolerance) => {
      const wav = takeOf(depth);
      expect(wav).toMatchObject({ sampleRate: 48000, frames: shortTake.lengthSamples });
      expect(wav.channels).toHaveLength(shortTake.channels.length);
      for (const [index, label] of shortTake.channels.entries()) {
        expectClose(wav.channels[index], renderChannel(shortTake, label), tolerance);
      }
    },
  );

  it('dithers 16 bits the same way every time', () => {
    expect(Buffer.compare(bytesOf('take.wav', 16), bytesOf('take.wav', 16))).toBe(0);
    const [first] = takeOf(16).channels;
    const silence = first?.subarray(0, shortTake.silence.length) ?? [];
    const steps = new Set([...silence].map((sample) => sample * 2 ** 15));
    expect([...steps].map((step) => step + 0).sort((a, b) => a - b)).toEqual([-1, 0, 1]);
  });

  it('tells players where each channel belongs', () => {
    // Masks of 5.1 with sides and of 7.1: the format's documentation.
    expect(takeWavSpec(shortTakeOf('5.1'), 24).channelMask).toBe(0x60f);
    expect(takeWavSpec(shortTakeOf('7.1'), 24).channelMask).toBe(0x63f);
    expect(takeOf(24).channelMask).toBe(0xb);
  });
});

function bytesOf(name: string, depth?: WavDepth): Uint8Array {
  const file = takeFiles(shortTake, depth).find((candidate) => candidate.name === name);
  return joinPieces([...(file?.pieces ?? [])]);
}

function takeOf(depth: WavDepth) {
  const wav = readWav(bytesOf('take.wav', depth));
  return isTrouble(wav) ? expect.fail(wav.sentence) : wav;
}
