import { largestMagnitude } from '../level/largest';
import { realSignal, realSpectrum } from '../fft/fft';
import { seededRandom } from './random';

/** Periodic band-limited pink noise: equal power in every octave between the two ends. */
export interface PinkSpec {
  readonly lowHz: number;
  readonly highHz: number;
  /** A power of two. */
  readonly periodSamples: number;
  readonly sampleRate: number;
  readonly seed: number;
}

const crestRounds = 40;
/** Each round clips to this part of the peak before the magnitudes are put back. */
const clipFirst = 0.55;
const clipLast = 0.9;

/**
 * One period of a pink multisine, peak 1: sines at every bin from lowHz to highHz, magnitude 1/√f,
 * phases random from the seed and then improved for a low crest factor by clipping and putting the
 * magnitudes back. Played end to end it has no seam, and a whole number of periods has no
 * statistical error of level. Throws RangeError when no bin lies in the band, or the period is no
 * power of two. Source of the clipping method: Van der Ouderaa, Schoukens and Renneboog, IEEE
 * Trans. Instrum. Meas. 37 (1988).
 */
export function periodicPink(spec: PinkSpec): Float64Array {
  const { lowHz, highHz, periodSamples, sampleRate } = spec;
  const hzPerBin = sampleRate / periodSamples;
  const first = Math.max(Math.ceil(lowHz / hzPerBin), 1);
  const last = Math.min(Math.floor(highHz / hzPerBin), Math.ceil(periodSamples / 2) - 1);
  if (!(lowHz > 0 && first <= last && highHz <= sampleRate / 2)) {
    throw new RangeError(`no sine lies between ${lowHz} and ${highHz} Hz`);
  }
  const random = seededRandom(spec.seed);
  const spectrum = new Float64Array(periodSamples + 2);
  for (let k = first; k <= last; k++) {
    const phase = 2 * Math.PI * random();
    spectrum[2 * k] = Math.cos(phase) / Math.sqrt(k);
    spectrum[2 * k + 1] = Math.sin(phase) / Math.sqrt(k);
  }
  let best = realSignal(spectrum, periodSamples);
  let bestPeak = largestMagnitude(best);
  let signal = best;
  for (let round = 0; round < crestRounds; round++) {
    const clip = clipFirst + ((clipLast - clipFirst) * round) / (crestRounds - 1);
    const limit = clip * largestMagnitude(signal);
    const clipped = signal.map((v) => Math.min(Math.max(v, -limit), limit));
    signal = realSignal(
      restoreMagnitudes(realSpectrum(clipped, periodSamples), first, last),
      periodSamples,
    );
    const peak = largestMagnitude(signal);
    if (peak < bestPeak) [best, bestPeak] = [signal, peak];
  }
  return best.map((v) => v / bestPeak);
}

/** Keeps the phases from bin `first` to `last`, sets their magnitudes to 1/√k, clears the rest. */
function restoreMagnitudes(spectrum: Float64Array, first: number, last: number): Float64Array {
  spectrum.fill(0, 0, 2 * first);
  spectrum.fill(0, 2 * last + 2);
  for (let k = first; k <= last; k++) {
    const re = spectrum[2 * k] ?? 0;
    const im = spectrum[2 * k + 1] ?? 0;
    const magnitude = Math.hypot(re, im);
    const scale = magnitude > 0 ? 1 / (magnitude * Math.sqrt(k)) : 0;
    spectrum[2 * k] = magnitude > 0 ? re * scale : 1 / Math.sqrt(k);
    spectrum[2 * k + 1] = im * scale;
  }
  return spectrum;
}
