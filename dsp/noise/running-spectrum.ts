import { realSpectrum, type HalfSpectrum } from '../fft/fft';
import type { PowerSpectrum } from '../response/power-spectrum';

/** Averaged spectrum of sound as it comes. */
export interface RunningSpectrum {
  /** Returns how many stretches became full. */
  push(samples: ArrayLike<number>): number;
  /** Audio was lost: the stretch being gathered begins anew. */
  gap(): void;
  /** Stretches averaged. */
  readonly count: number;
  /** Mean square of each bin, one-sided; null until one stretch is full. */
  read(): PowerSpectrum | null;
  clear(): void;
  /** From now on forgets what is more than about so many stretches old. */
  setMost(count: number): void;
}

/**
 * Welch's averaged periodogram: stretches of `size` samples (a power of two) that overlap by half,
 * Hann window. Beyond `most` stretches the oldest fade away. The bins of steady noise add up to its
 * mean square. A sample that is not finite counts as silence. Throws RangeError for a size that is
 * no power of two of at least 16, or most below 1. Source: Welch, IEEE Trans. AU-15 (1967).
 */
export function createRunningSpectrum(
  size: number,
  sampleRate: number,
  most = Infinity,
): RunningSpectrum {
  if (!(size >= 16)) throw new RangeError(`size must be at least 16, got ${size}`);
  if (!(most >= 1)) throw new RangeError(`at least 1 stretch is averaged, got ${most}`);
  const window = Float64Array.from({ length: size }, (_, n) => Math.sin((Math.PI * n) / size) ** 2);
  const stretch = new Float64Array(size);
  const windowed = new Float64Array(size);
  const spectrum = new Float64Array(size + 2);
  const mean = new Float64Array(realSpectrum(windowed, size).length / 2);
  let limit = most;
  let filled = 0;
  let count = 0;
  /** 2/(size·Σw²), Σw² = 3/8 size. */
  const scale = 2 / (0.375 * size * size);
  const average = (): void => {
    multiplyInto(windowed, stretch, window);
    realSpectrum(windowed, size, spectrum);
    count = Math.min(count + 1, limit);
    moveTowards(mean, spectrum, scale, count);
  };
  return {
    push(samples) {
      let done = 0;
      for (let at = 0; at < samples.length;) {
        const more = Math.min(size - filled, samples.length - at);
        copyFinite(stretch, filled, samples, at, more);
        at += more;
        filled += more;
        if (filled < size) continue;
        average();
        done++;
        stretch.copyWithin(0, size / 2);
        filled = size / 2;
      }
      return done;
    },
    gap: () => {
      filled = 0;
    },
    get count() {
      return count;
    },
    read: () => (count > 0 ? { hzPerBin: sampleRate / size, power: mean.slice() } : null),
    clear() {
      mean.fill(0);
      count = 0;
      filled = 0;
    },
    setMost(next) {
      if (!(next >= 1)) throw new RangeError(`at least 1 stretch is averaged, got ${next}`);
      limit = next;
      count = Math.min(count, next);
    },
  };
}

function multiplyInto(out: Float64Array, a: Float64Array, b: Float64Array): void {
  for (let n = 0; n < out.length; n++) out[n] = (a[n] ?? 0) * (b[n] ?? 0);
}

/** Moves a one-sided mean by 1/count of its way to the power of a spectrum. */
function moveTowards(
  mean: Float64Array,
  spectrum: HalfSpectrum,
  scale: number,
  count: number,
): void {
  const last = mean.length - 1;
  for (let k = 0; k <= last; k++) {
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    const once = k === 0 || k === last ? 0.5 : 1;
    const old = mean[k] ?? 0;
    mean[k] = old + (once * scale * (re * re + im * im) - old) / count;
  }
}

/** `count` samples from `from` on into `to` from `at` on; 0 for what is not finite. */
function copyFinite(
  to: Float64Array,
  at: number,
  samples: ArrayLike<number>,
  from: number,
  count: number,
): void {
  for (let n = 0; n < count; n++) {
    const value = samples[from + n] ?? 0;
    to[at + n] = Number.isFinite(value) ? value : 0;
  }
}
