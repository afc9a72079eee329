import type { HalfSpectrum } from './fft';

/** A turning factor is computed anew after so many steps, before its error grows. */
const turnsAnew = 256;

/**
 * Moves the signal of a half spectrum `samples` to the left, round its ends; for parts of a sample
 * between its values, band-limited. `size` as in realSpectrum.
 */
export function advance(spectrum: HalfSpectrum, samples: number, size: number): void {
  if (samples === 0) return;
  const step = (2 * Math.PI * samples) / size;
  const [stepRe, stepIm] = [Math.cos(step), Math.sin(step)];
  for (let from = 0; from <= size / 2; from += turnsAnew) {
    let cos = Math.cos(step * from);
    let sin = Math.sin(step * from);
    for (let k = from; k < Math.min(from + turnsAnew, size / 2 + 1); k++) {
      const re = spectrum[2 * k] ?? 0;
      const im = spectrum[2 * k + 1] ?? 0;
      spectrum[2 * k] = re * cos - im * sin;
      spectrum[2 * k + 1] = re * sin + im * cos;
      const next = cos * stepRe - sin * stepIm;
      sin = cos * stepIm + sin * stepRe;
      cos = next;
    }
  }
}
