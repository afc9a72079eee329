import { describe, expect, it } from 'vitest';
import { assembleCapture } from '../../../../src/rig/live/assemble-capture';
import type { CaptureChunk } from '../../../../src/rig/live/capture-message';

/** A chunk whose samples are their own frame numbers, and their negatives on the second channel. */
function chunk(frame: number, length: number): CaptureChunk {
  const left = Float32Array.from({ length }, (_, n) => frame + n);
  return { kind: 'chunk', frame, channels: [left, left.map((value) => -value)] };
}

describe('assembleCapture', () => {
  it('puts every frame where its count says and cuts what lies outside', () => {
    const { channels, gaps } = assembleCapture(
      [chunk(90, 8), chunk(98, 8), chunk(106, 8)],
      100,
      10,
    );
    expect([...(channels[0] ?? [])]).toEqual([100, 101, 102, 103, 104, 105, 106, 107, 108, 109]);
    expect([...(channels[1] ?? [])][3]).toBe(-103);
    expect(gaps).toEqual([]);
  });

  it('fills a jump of the frame count with zeros and lists it', () => {
    const { channels, gaps } = assembleCapture([chunk(100, 4), chunk(107, 8)], 100, 12);
    expect([...(channels[0] ?? [])].slice(3, 8)).toEqual([103, 0, 0, 0, 107]);
    expect(gaps).toEqual([{ atSample: 4, samples: 3 }]);
  });

  it('lists what is missing at the start and at the end', () => {
    expect(assembleCapture([chunk(102, 4)], 100, 8).gaps).toEqual([
      { atSample: 0, samples: 2 },
      { atSample: 6, samples: 2 },
    ]);
  });
});
