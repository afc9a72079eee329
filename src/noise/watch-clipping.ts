/** Tells whether a microphone clips. */
export interface ClipWatch {
  push(samples: Float32Array): void;
  readonly clipped: boolean;
  clear(): void;
}

const fullScale = 0.999;

/** A sample at full scale counts as clipped; one alone may be chance, three are not. */
export function createClipWatch(): ClipWatch {
  let count = 0;
  return {
    push(samples) {
      for (const value of samples) if (Math.abs(value) >= fullScale) count++;
    },
    get clipped() {
      return count >= 3;
    },
    clear: () => {
      count = 0;
    },
  };
}
