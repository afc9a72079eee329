import { realSignal, realSpectrum } from '../../../dsp/fft/fft';

/** Convolves one channel after another into a sum, block by block. */
export interface Convolver {
  /** Adds channel `index`'s next block (blockLength samples). */
  add(index: number, block: ArrayLike<number>): void;
  /** The sum of all that was added for this block, blockLength samples; opens the next block. */
  take(): Float64Array;
}

/**
 * Uniformly partitioned overlap-save convolution (Stockham 1966) of several inputs into one
 * output. `responses[i]` belongs to input i; null means silence.
 */
export function createConvolver(
  responses: readonly (Float64Array | null)[],
  blockLength: number,
): Convolver {
  const size = 2 * blockLength;
  const inputs = responses.map((response) => {
    const filters: Float64Array[] = [];
    for (let at = 0; response && at < response.length; at += blockLength) {
      filters.push(realSpectrum(response.subarray(at, at + blockLength), size));
    }
    const history = filters.map(() => new Float64Array(size + 2));
    return { filters, history, window: new Float64Array(size), newest: 0, silentBlocks: Infinity };
  });
  const sum = new Float64Array(size + 2);

  return {
    add(index, block) {
      const input = inputs[index];
      if (!input || input.filters.length === 0) return;
      const { filters, history, window } = input;
      input.silentBlocks = isSilent(block) ? input.silentBlocks + 1 : 0;
      if (input.silentBlocks > filters.length + 1) return;
      window.copyWithin(0, blockLength);
      window.set(block, blockLength);
      input.newest = (input.newest + history.length - 1) % history.length;
      history[input.newest]?.set(realSpectrum(window, size));
      for (const [part, filter] of filters.entries()) {
        const past = history[(input.newest + part) % history.length];
        if (past) accumulate(sum, past, filter);
      }
    },
    take() {
      const signal = realSignal(sum, size);
      sum.fill(0);
      return signal.slice(blockLength);
    },
  };
}

function isSilent(block: ArrayLike<number>): boolean {
  for (let n = 0; n < block.length; n++) if (block[n] !== 0) return false;
  return true;
}

function accumulate(sum: Float64Array, x: Float64Array, y: Float64Array): void {
  for (let k = 0; k < x.length; k += 2) {
    const a = x[k] ?? 0;
    const b = x[k + 1] ?? 0;
    const c = y[k] ?? 0;
    const d = y[k + 1] ?? 0;
    sum[k] = (sum[k] ?? 0) + a * c - b * d;
    sum[k + 1] = (sum[k + 1] ?? 0) + a * d + b * c;
  }
}
