import { describe, expect, it } from 'vitest';
import { createRecorder } from '../../../../src/rig/live/recorder';
import type { MicLevel, PlayProgress } from '../../../../src/rig/port';

function startRecorder() {
  const progress: PlayProgress[] = [];
  const levels: MicLevel[] = [];
  const recorder = createRecorder(
    { lengthSamples: 1000, sampleRate: 100 },
    3,
    2,
    { onProgress: (now) => progress.push(now) },
    (level) => levels.push(level),
  );
  const level = (frame: number, peak = 0.5) =>
    recorder.listen({ kind: 'level', frame, rms: 0.1, peak });
  const chunk = (frame: number, length: number) =>
    recorder.listen({ kind: 'chunk', frame, channels: [new Float32Array(length).fill(frame)] });
  return { recorder, progress, levels, level, chunk };
}

describe('createRecorder', () => {
  it('counts the time left down without a jump from settling to the end', () => {
    const { recorder, progress, level } = startRecorder();
    level(500);
    level(600);
    recorder.keepFrom(800);
    for (const frame of [700, 800, 1300, 1800, 1900, 2000]) level(frame);
    expect(progress.map((now) => now.phase)).toEqual([
      'settling',
      'settling',
      'settling',
      'settling',
      'playing',
      'finishing',
      'finishing',
      'finishing',
    ]);
    expect(progress.map((now) => now.secondsLeft)).toEqual([15, 14, 13, 12, 7, 2, 1, 0]);
    expect(progress.map((now) => now.position)).toEqual([0, 0, 0, 0, 500, 1000, 1000, 1000]);
    expect(progress.map((now) => now.progress)).toEqual([0, 0, 0, 0, 0.5, 1, 1, 1]);
  });

  it('is complete when the stimulus and its latency have passed', async () => {
    const { recorder, chunk } = startRecorder();
    chunk(700, 100);
    recorder.keepFrom(850);
    for (let frame = 800; frame < 2050; frame += 100) chunk(frame, 100);
    await recorder.complete;
    const { channels, gaps } = recorder.assemble();
    expect(channels[0]).toHaveLength(1200);
    expect(channels[0]?.[0]).toBe(800);
    expect(channels[0]?.[1199]).toBe(2000);
    expect(gaps).toEqual([]);
  });

  it('gives levels in dB and names a clipped one', () => {
    const { levels, level } = startRecorder();
    level(0);
    level(100, 1);
    expect(levels[0]?.rmsDb).toBeCloseTo(-20, 9);
    expect(levels[0]).toMatchObject({ clipped: false });
    expect(levels[1]).toMatchObject({ peakDb: 0, clipped: true });
  });
});
