import { describe, expect, it } from 'vitest';
import type { CaptureChunk } from '../../../../src/rig/live/capture-message';
import { createLineBlocks } from '../../../../src/rig/live/line-blocks';
import type { CapturedBlock } from '../../../../src/rig/port';

type Sides = Parameters<typeof createLineBlocks>[1];

function chunk(frame: number, left: number, right: number, length = 100): CaptureChunk {
  const channels = [left, right].map((value) => new Float32Array(length).fill(value));
  return { kind: 'chunk', frame, channels };
}

function openBlocks(sides: Sides, quiet: readonly CaptureChunk[] = []) {
  const heard: CapturedBlock[] = [];
  const blocks = createLineBlocks(1000, sides, (block) => heard.push(block));
  for (const each of quiet) blocks.listen(each);
  return { blocks, heard, inputs: blocks.open() };
}

const unsaid: Sides = { microphoneInput: null, loopback: false };

describe('createLineBlocks', () => {
  it('gives nothing before the line opens and counts frames from then, jumps kept', () => {
    const { blocks, heard } = openBlocks(unsaid, [chunk(5000, 0.1, 0)]);
    for (const frame of [5100, 5200, 5428]) blocks.listen(chunk(frame, 0.2, 0));
    expect(heard.map(({ frame }) => frame)).toEqual([0, 100, 328]);
    expect(heard[0]?.samples).toEqual(new Float32Array(100).fill(0.2));
    expect(heard[0]?.loopback).toBeNull();
  });

  it('finds the microphone in the quiet: a room is louder than a wire or an open input', () => {
    const quiet = [chunk(0, 0.0001, 0.01)];
    expect(openBlocks(unsaid, quiet).inputs).toEqual({ microphone: 1, loopback: null });
    const wired = openBlocks({ microphoneInput: null, loopback: true }, quiet);
    expect(wired.inputs).toEqual({ microphone: 1, loopback: 0 });
    wired.blocks.listen(chunk(100, 0.5, 0.2));
    expect(wired.heard[0]?.samples[0]).toBeCloseTo(0.2, 6);
    expect(wired.heard[0]?.loopback?.[0]).toBeCloseTo(0.5, 6);
  });

  it('judges by the last second only: what a browser fills in at first says nothing', () => {
    const quiet = [chunk(0, 0.9, 0), chunk(1500, 0, 0.01), chunk(2400, 0, 0.01)];
    expect(openBlocks(unsaid, quiet).inputs.microphone).toBe(1);
  });

  it('takes the side that was said, also when the other is louder', () => {
    const said: Sides = { microphoneInput: 0, loopback: false };
    expect(openBlocks(said, [chunk(0, 0, 0.5)]).inputs.microphone).toBe(0);
  });

  it('opens without having heard anything, on the first side', () => {
    expect(openBlocks(unsaid).inputs.microphone).toBe(0);
  });

  it('gives nothing more once it is closed', () => {
    const { blocks, heard } = openBlocks(unsaid);
    blocks.close();
    blocks.listen(chunk(0, 1, 1));
    expect(heard).toEqual([]);
  });
});
