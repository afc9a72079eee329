import { realSignal } from '../fft/fft';

/** Bins of a period of `size` samples that carry its power. */
export interface PeriodBins {
  readonly size: number;
  readonly first: number;
  readonly last: number;
}

/** Where one period stands against another. */
export interface PeriodShift {
  /** How much later, samples; a period is a circle. */
  readonly samples: number;
  /** Correlation there, −1 … 1. */
  readonly match: number;
}

const mostSteps = 8;

/**
 * Delay of spectrum `a` after `b` near 0 (within a quarter of the shortest wave that carries power)
 * by Newton's method on the phase-turned cross-spectrum, maximising Re Σ A B* e^(iωr); half spectra
 * as of realSpectrum, only their bins.
 */
export function nearDelay(a: Float64Array, b: Float64Array, bins: PeriodBins): PeriodShift {
  const { first, last } = bins;
  const step = (2 * Math.PI) / bins.size;
  const energy = Math.sqrt(energyOf(a, bins) * energyOf(b, bins));
  if (!(energy > 0)) return { samples: 0, match: 0 };
  let samples = 0;
  let match = 0;
  for (let round = 0; round < mostSteps; round++) {
    let sum = 0;
    let slope = 0;
    let bend = 0;
    const turnCos = Math.cos(step * samples);
    const turnSin = Math.sin(step * samples);
    let cos = Math.cos(step * samples * first);
    let sin = Math.sin(step * samples * first);
    for (let k = first; k <= last; k++) {
      const ar = a[2 * k] ?? 0;
      const ai = a[2 * k + 1] ?? 0;
      const br = b[2 * k] ?? 0;
      const bi = b[2 * k + 1] ?? 0;
      const zr = ar * br + ai * bi;
      const zi = ai * br - ar * bi;
      const re = zr * cos - zi * sin;
      const im = zr * sin + zi * cos;
      const w = step * k;
      sum += re;
      slope -= w * im;
      bend -= w * w * re;
      const next = cos * turnCos - sin * turnSin;
      sin = cos * turnSin + sin * turnCos;
      cos = next;
    }
    match = sum / energy;
    if (!(bend < 0)) break;
    const move = Math.max(Math.min(-slope / bend, 0.5), -0.5);
    samples += move;
    if (Math.abs(move) < 1e-6) break;
  }
  return { samples, match };
}

/**
 * Delay of `a` after `b` wherever it lies, at most `reach` samples either way: peak of the circular
 * correlation with a parabola through it.
 */
export function anyDelay(
  a: Float64Array,
  b: Float64Array,
  bins: PeriodBins,
  reach: number,
): PeriodShift {
  const { size, first, last } = bins;
  const energy = Math.sqrt(energyOf(a, bins) * energyOf(b, bins));
  if (!(energy > 0)) return { samples: 0, match: 0 };
  const cross = new Float64Array(size + 2);
  for (let k = first; k <= last; k++) {
    const ar = a[2 * k] ?? 0;
    const ai = a[2 * k + 1] ?? 0;
    const br = b[2 * k] ?? 0;
    const bi = b[2 * k + 1] ?? 0;
    cross[2 * k] = ar * br + ai * bi;
    cross[2 * k + 1] = ai * br - ar * bi;
  }
  const correlation = realSignal(cross, size);
  const at = (lag: number): number => correlation[(lag + size) % size] ?? 0;
  const most = Math.min(Math.floor(reach), size / 2 - 1);
  let best = 0;
  for (let lag = -most; lag <= most; lag++) if (at(lag) > at(best)) best = lag;
  const [before, peak, after] = [at(best - 1), at(best), at(best + 1)];
  const bend = before - 2 * peak + after;
  const part = bend < 0 ? (0.5 * (before - after)) / bend : 0;
  const samples = best + Math.max(Math.min(part, 0.5), -0.5);
  return { samples, match: (peak * size) / (2 * energy) };
}

/** Turns a half spectrum so that its period comes `samples` earlier, in place. */
export function advancePeriod(
  spectrum: Float64Array,
  samples: number,
  { size, first, last }: PeriodBins,
): void {
  const step = (2 * Math.PI * samples) / size;
  for (let k = first; k <= last; k++) {
    const cos = Math.cos(step * k);
    const sin = Math.sin(step * k);
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    spectrum[2 * k] = re * cos - im * sin;
    spectrum[2 * k + 1] = re * sin + im * cos;
  }
}

/** Σ |A_k|² over the bins. */
function energyOf(spectrum: Float64Array, { first, last }: PeriodBins): number {
  let sum = 0;
  for (let k = 2 * first; k < 2 * last + 2; k++) sum += (spectrum[k] ?? 0) ** 2;
  return sum;
}
