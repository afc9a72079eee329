/** The latest stretch of a capture, addressed by frames counted from its start. */
export interface CaptureWindow {
  /** Frame of the first sample held. */
  readonly start: number;
  /** Frame after the last sample held. */
  readonly end: number;
  /** Takes as many samples from index `from` on as there is room for; returns how many. */
  append(samples: ArrayLike<number>, from: number): number;
  /** Lets go of everything and goes on so many frames later. */
  skip(frames: number): void;
  /** Lets go of what lies before a frame. */
  forget(frame: number): void;
  /** What is held; index 0 is frame `start`. Valid until the next append. */
  held(): Float64Array;
}

/**
 * A window of at most `capacity` samples whose memory never grows. A sample that is not finite
 * counts as silence. Throws RangeError for a capacity below 1.
 */
export function createCaptureWindow(capacity: number): CaptureWindow {
  if (!Number.isInteger(capacity) || capacity < 1) {
    throw new RangeError(`capacity must be whole and at least 1, got ${capacity}`);
  }
  const store = new Float64Array(capacity);
  let start = 0;
  let length = 0;
  return {
    get start() {
      return start;
    },
    get end() {
      return start + length;
    },
    append(samples, from) {
      const count = Math.min(samples.length - from, capacity - length);
      for (let n = 0; n < count; n++) {
        const value = samples[from + n] ?? 0;
        store[length + n] = Number.isFinite(value) ? value : 0;
      }
      length += Math.max(count, 0);
      return Math.max(count, 0);
    },
    skip(frames) {
      start += length + frames;
      length = 0;
    },
    forget(frame) {
      const count = Math.min(Math.max(Math.floor(frame) - start, 0), length);
      store.copyWithin(0, count, length);
      start += count;
      length -= count;
    },
    held: () => store.subarray(0, length),
  };
}
