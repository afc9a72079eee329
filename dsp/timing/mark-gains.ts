import { median } from '../signal/median';
import { nextPowerOfTwo, realSignal, realSpectrum } from '../fft/fft';
import type { MarkSpec } from '../signal/mark';
import { bandGains, copyFinite } from './baseband';
import type { MarkFinding } from './mark-finding';
import type { Samples } from '../signal/samples';

/** Level of one mark against the median of all. */
export interface MarkGain {
  readonly db: number;
  /** Standard deviation that the noise in it gives. */
  readonly sigmaDb: number;
  /** Something else sounded over it: its rest is well above that of the others. */
  readonly disturbed: boolean;
}

const edgeSeconds = 0.002;
/** Power of the rest over the usual one from which on a mark is disturbed. */
const disturbedFrom = 4;
/** Marks differ by so much in any case, dB: resampling, the template's own noise. */
const leastSigmaDb = 0.01;

/**
 * Level of every found mark re their median, dB, through the mean received mark; null where none
 * was found. `finding` of the same capture. The rest that the template does not explain gives the
 * uncertainty.
 */
export function markGains(
  capture: Samples,
  finding: MarkFinding,
  mark: MarkSpec,
): (MarkGain | null)[] {
  const { template, captureRate } = finding;
  const width = template.samples.length;
  const size = nextPowerOfTwo(width + 64);
  const low = Math.min(mark.startHz, mark.endHz);
  const high = Math.max(mark.startHz, mark.endHz);
  const gains = bandGains(size, captureRate, low, high);
  const edge = Math.round(edgeSeconds * captureRate);
  const dof = Math.max(1, (width * 2 * (high - low)) / captureRate);
  const readings = finding.marks.map((found) => {
    if (!found) return null;
    const piece = cutMark(capture, found.position - template.leadSamples, width, gains, edge);
    return compare(piece, template.samples, dof);
  });
  const found = readings.filter((one) => one !== null);
  const middle = median(found.map(({ gain }) => gain));
  const usual = median(found.map(({ rest }) => rest));
  return readings.map((one): MarkGain | null => {
    if (!one || !(one.gain > 0 && middle > 0)) return null;
    const db = 20 * Math.log10(one.gain / middle);
    const sigmaDb = Math.hypot((20 / Math.LN10) * one.sigma, leastSigmaDb);
    return { db, sigmaDb, disturbed: one.rest > disturbedFrom * usual };
  });
}

/** Band-limited stretch of `width` samples from a fractional place on. */
function cutMark(
  capture: Samples,
  from: number,
  width: number,
  gains: Float64Array,
  edge: number,
): Float64Array {
  const size = 2 * (gains.length - 1);
  const pad = Math.floor((size - width) / 2);
  const whole = Math.round(from);
  const shift = from - whole;
  const piece = new Float64Array(size);
  copyFinite(capture, whole - pad, piece);
  taper(piece, edge);
  const spectrum = realSpectrum(piece, size);
  for (let bin = 0; bin < gains.length; bin++) {
    const gain = gains[bin] ?? 0;
    const angle = (2 * Math.PI * bin * shift) / size;
    const [cos, sin] = [gain * Math.cos(angle), gain * Math.sin(angle)];
    const re = spectrum[2 * bin] ?? 0;
    const im = spectrum[2 * bin + 1] ?? 0;
    spectrum[2 * bin] = re * cos - im * sin;
    spectrum[2 * bin + 1] = re * sin + im * cos;
  }
  const cut = realSignal(spectrum, size).slice(pad, pad + width);
  taper(cut, edge);
  return cut;
}

/** Gain re the template, its relative deviation, and the rest's power. */
function compare(piece: Float64Array, template: Float64Array, dof: number) {
  let product = 0;
  let own = 0;
  let energy = 0;
  for (let n = 0; n < template.length; n++) {
    const value = template[n] ?? 0;
    const sample = piece[n] ?? 0;
    product += value * sample;
    own += sample * sample;
    energy += value * value;
  }
  const gain = energy > 0 ? product / energy : 0;
  const rest = Math.max(0, own - gain * product);
  const sigma = gain > 0 ? Math.sqrt(rest / (gain * product) / dof) : Infinity;
  return { gain, rest, sigma };
}

function taper(signal: Float64Array, edge: number): void {
  const end = signal.length - 1;
  for (let n = 0; n < edge; n++) {
    const gain = 0.5 * (1 - Math.cos((Math.PI * (n + 0.5)) / edge));
    signal[n] = gain * (signal[n] ?? 0);
    signal[end - n] = gain * (signal[end - n] ?? 0);
  }
}
