import { breathe } from './breathe';

/** A piece of a sound on its way to a worker. */
export interface SoundPiece {
  readonly kind: 'sound';
  /** Which sound it is of, and how many samples that has. */
  readonly name: string;
  readonly frames: number;
  /** Its first sample. */
  readonly at: number;
  readonly samples: Float32Array;
}

/** Samples of a piece: 1 MB. */
const pieceFrames = 2 ** 18;

/**
 * Sends a sound to a worker, which gathers it with `gatherSounds`: a piece a task, since copying
 * a long one whole would hold up the screen. The sound stays as it is. Ends early, with part of it
 * sent, once the signal is aborted.
 */
export async function sendSound(
  worker: { postMessage(piece: SoundPiece, options: { transfer: Transferable[] }): void },
  name: string,
  sound: Float32Array,
  signal: AbortSignal,
): Promise<void> {
  const frames = sound.length;
  for (let at = 0; at < frames; at += pieceFrames) {
    if (at > 0) await breathe();
    if (signal.aborted) return;
    const samples = new Float32Array(sound.subarray(at, at + pieceFrames));
    worker.postMessage(
      { kind: 'sound', name, frames, at, samples },
      { transfer: [samples.buffer] },
    );
  }
}

/** Puts sounds together again that come in pieces. */
export interface SoundGatherer {
  add(piece: SoundPiece): void;
  /** The sound of a name, which is given once; one without samples where none came. */
  take(name: string): Float32Array;
}

export function gatherSounds(): SoundGatherer {
  const sounds = new Map<string, Float32Array>();
  return {
    add({ name, frames, at, samples }) {
      const sound = sounds.get(name) ?? new Float32Array(frames);
      sound.set(samples, at);
      sounds.set(name, sound);
    },
    take(name) {
      const sound = sounds.get(name) ?? new Float32Array(0);
      sounds.delete(name);
      return sound;
    },
  };
}
