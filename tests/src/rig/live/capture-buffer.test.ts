import { describe, expect, it } from 'vitest';
import { chunkFrames, createCaptureBuffer } from '../../../../src/rig/live/capture-buffer';
import type { CaptureChunk, CaptureLevel } from '../../../../src/rig/live/capture-message';

/** Pushes quanta of 128 frames, whose left samples are their frame numbers, at these frames. */
function pushQuanta(frames: readonly number[]) {
  const chunks: CaptureChunk[] = [];
  const levels: CaptureLevel[] = [];
  const transferred: ArrayBuffer[] = [];
  const buffer = createCaptureBuffer(48000, (message, transfer) => {
    if (message.kind === 'chunk') chunks.push(message);
    else levels.push(message);
    transferred.push(...transfer);
  });
  const reused = [new Float32Array(128), new Float32Array(128)] as const;
  for (const frame of frames) {
    for (let n = 0; n < 128; n++) reused[0][n] = frame + n;
    reused[1].fill(-1);
    buffer.push(reused, frame);
  }
  return { chunks, levels, transferred };
}

const quantaFrom = (start: number, count: number) =>
  Array.from({ length: count }, (_, n) => start + 128 * n);

describe('createCaptureBuffer', () => {
  it('gathers 4096 frames, copied out of the reused input, and hands them over', () => {
    const { chunks, transferred } = pushQuanta(quantaFrom(1280, 65));
    expect(chunks.map((chunk) => chunk.frame)).toEqual([1280, 1280 + 4096]);
    const [left, right] = chunks[0]?.channels ?? [];
    expect(left).toEqual(Float32Array.from({ length: chunkFrames }, (_, n) => 1280 + n));
    expect(right).toEqual(new Float32Array(chunkFrames).fill(-1));
    const arrays = chunks.flatMap((chunk) => chunk.channels.map((samples) => samples.buffer));
    expect(transferred).toEqual(arrays);
  });

  it('closes a chunk where the frame count jumps', () => {
    const { chunks } = pushQuanta([...quantaFrom(0, 2), ...quantaFrom(1024, 33)]);
    expect(chunks.map((chunk) => [chunk.frame, chunk.channels[0]?.length])).toEqual([
      [0, 256],
      [1024, 4096],
    ]);
  });

  it('measures about twenty times a second, the louder side', () => {
    const { levels } = pushQuanta(quantaFrom(0, 375));
    expect(levels).toHaveLength(19);
    expect(levels[0]?.frame).toBe(19 * 128);
    expect(levels[0]?.peak).toBe(19 * 128 - 1);
    const expected = Math.sqrt(
      quantaFrom(0, 19 * 128)
        .map((_, n) => n * n)
        .reduce((sum, square) => sum + square, 0) /
        (19 * 128),
    );
    expect(levels[0]?.rms).toBeCloseTo(expected, 3);
  });

  it('takes a microphone that gives no channels for silence', () => {
    const chunks: CaptureChunk[] = [];
    const buffer = createCaptureBuffer(48000, (message) => {
      if (message.kind === 'chunk') chunks.push(message);
    });
    for (const frame of quantaFrom(0, 33)) buffer.push([], frame);
    expect(chunks[0]?.channels[0]).toEqual(new Float32Array(4096));
  });
});
