import { describe, expect, it } from 'vitest';
import { gatherSounds, sendSound, type SoundPiece } from '../../src/send-sound';

const on = new AbortController().signal;
const megabyte = 2 ** 20;

/** A worker that takes what it is sent as a browser does: a buffer handed over is gone here. */
function listener() {
  const pieces: SoundPiece[] = [];
  return {
    pieces,
    postMessage(piece: SoundPiece, { transfer }: { transfer: Transferable[] }): void {
      pieces.push(structuredClone(piece, { transfer: transfer as ArrayBuffer[] }));
    },
  };
}

function gathered(pieces: readonly SoundPiece[], name = 'samples'): Float32Array {
  const sounds = gatherSounds();
  for (const piece of pieces) sounds.add(piece);
  return sounds.take(name);
}

describe('a sound sent to a worker', () => {
  it.each([0, 1, 2 ** 18 - 1, 2 ** 18, 2 ** 18 + 1, 700_000])(
    'of %i samples is there as it was, and stays here',
    async (frames) => {
      const sound = Float32Array.from({ length: frames }, (_, n) => Math.sin(n));
      const before = sound.slice();
      const worker = listener();
      await sendSound(worker, 'samples', sound, on);
      expect(Buffer.from(gathered(worker.pieces).buffer).equals(Buffer.from(before.buffer))).toBe(
        true,
      );
      expect(sound.length).toBe(frames);
      expect(Buffer.from(sound.buffer).equals(Buffer.from(before.buffer))).toBe(true);
    },
  );

  it('goes in pieces of a megabyte, each in a task of its own', async () => {
    const worker = listener();
    let tasks = 0;
    const count = setInterval(() => tasks++, 0);
    const seen: number[] = [];
    const { postMessage } = worker;
    worker.postMessage = (piece, options) => {
      seen.push(tasks);
      postMessage(piece, options);
    };
    await sendSound(worker, 'samples', new Float32Array(1_000_000), on);
    clearInterval(count);
    expect(worker.pieces).toHaveLength(4);
    for (const { samples } of worker.pieces) {
      expect(samples.buffer.byteLength).toBeLessThanOrEqual(megabyte);
    }
    expect(new Set(seen).size).toBe(4);
  });

  it('that is part of a longer one goes without the rest', async () => {
    const worker = listener();
    const whole = Float32Array.from({ length: 1000 }, (_, n) => n);
    await sendSound(worker, 'samples', whole.subarray(100, 110), on);
    expect(gathered(worker.pieces)).toEqual(whole.slice(100, 110));
    expect(worker.pieces[0]?.samples.buffer.byteLength).toBe(40);
  });

  it('stays apart from another, and is given once', async () => {
    const worker = listener();
    await sendSound(worker, 'samples', new Float32Array([1, 2]), on);
    await sendSound(worker, 'loopback', new Float32Array([3]), on);
    const sounds = gatherSounds();
    for (const piece of worker.pieces) sounds.add(piece);
    expect(sounds.take('loopback')).toEqual(new Float32Array([3]));
    expect(sounds.take('samples')).toEqual(new Float32Array([1, 2]));
    expect(sounds.take('samples')).toEqual(new Float32Array(0));
  });

  it('ends early when it is stopped', async () => {
    const worker = listener();
    const stop = new AbortController();
    const sending = sendSound(worker, 'samples', new Float32Array(1_000_000), stop.signal);
    stop.abort();
    await sending;
    expect(worker.pieces).toHaveLength(1);
  });
});
