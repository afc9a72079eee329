import { nextPowerOfTwo, realSpectrum } from '../fft/fft';
import { decimate } from './decimate';

/** Lines at multiples of a mains frequency. */
export interface MainsLines {
  readonly mainsHz: 50 | 60;
  /** What it really is, Hz. */
  readonly foundHz: number;
  /** Rms of all lines that stand out, dB re full scale. */
  readonly levelDb: number;
  /** Mean square of each line that stands out, by its multiple. */
  readonly lines: ReadonlyMap<number, number>;
}

const thinnedHz = 3000;
const multiples = 8;
/** Mains stay within so many Hz, tried in steps. */
const reachHz = 0.25;
const stepHz = 0.05;
/** A line's power over the median beside it: two such, or one of the second kind, make a hum. */
const standsOut = 10 ** 1.2;
const alone = 10 ** 2.1;
/** The background is read so far to either side, in widths of a line. */
const besideWidths = [3, 12] as const;

/**
 * The family of lines that stands out most in samples[from … to), 0.8 s or longer; null when none
 * does, or when they do not last: each half must hold them within 8 dB. Rates from 8 kHz up.
 * Common practice.
 */
export function findMainsLines(
  samples: Float64Array,
  sampleRate: number,
  from = 0,
  to = samples.length,
): MainsLines | null {
  const factor = Math.max(1, Math.round(sampleRate / thinnedHz));
  const thin = decimate(samples.subarray(Math.max(0, from), Math.max(0, to)), factor);
  const rate = sampleRate / factor;
  if (thin.length < 0.8 * rate) return null;
  const whole = linePower(thin, rate);
  let best: MainsLines | null = null;
  for (const mainsHz of [50, 60] as const) {
    for (let off = -reachHz; off <= reachHz + 1e-9; off += stepHz) {
      const found = readFamily(whole, mainsHz, mainsHz + off);
      if (found && found.levelDb > (best?.levelDb ?? -Infinity)) best = found;
    }
  }
  if (!best) return null;
  const middle = thin.length >> 1;
  const halves = [thin.subarray(0, middle), thin.subarray(middle)].map((half) => {
    const power = linePower(half, rate);
    let sum = 0;
    for (const multiple of best.lines.keys()) sum += power.at(multiple * best.foundHz);
    return 10 * Math.log10(Math.max(sum, 1e-30));
  });
  return Math.abs((halves[0] ?? 0) - (halves[1] ?? 0)) > 8 ? null : best;
}

interface LinePower {
  /** Mean square of a line at a frequency. */
  readonly at: (hz: number) => number;
  /** What noise beside a frequency would read as a line: median. */
  readonly beside: (hz: number) => number;
}

function linePower(thin: Float64Array, rate: number): LinePower {
  const length = thin.length;
  const size = nextPowerOfTwo(4 * length);
  const windowed = new Float64Array(length);
  let sum = 0;
  for (let n = 0; n < length; n++) {
    const x = (2 * Math.PI * (n + 0.5)) / length;
    const window = 0.42 - 0.5 * Math.cos(x) + 0.08 * Math.cos(2 * x);
    sum += window;
    windowed[n] = window * (thin[n] ?? 0);
  }
  const spectrum = realSpectrum(windowed, size);
  const at = (hz: number): number => {
    const bin = Math.round((hz * size) / rate);
    const power = (spectrum[2 * bin] ?? 0) ** 2 + (spectrum[2 * bin + 1] ?? 0) ** 2;
    return (2 * power) / (sum * sum);
  };
  const width = rate / length;
  const beside = (hz: number): number => {
    const values: number[] = [];
    for (let d = besideWidths[0]; d <= besideWidths[1]; d++) {
      values.push(at(hz - d * width), at(hz + d * width));
    }
    values.sort((a, b) => a - b);
    return 0.5 * ((values[values.length / 2 - 1] ?? 0) + (values[values.length / 2] ?? 0));
  };
  return { at, beside };
}

function readFamily(power: LinePower, mainsHz: 50 | 60, foundHz: number): MainsLines | null {
  const lines = new Map<number, number>();
  let sum = 0;
  let strong = false;
  for (let k = 1; k <= multiples; k++) {
    // Lines both families share say nothing about which it is.
    if ((k * mainsHz) % 300 === 0) continue;
    const line = power.at(k * foundHz);
    const background = power.beside(k * foundHz);
    if (!(line > 1e-20 && line > standsOut * background)) continue;
    lines.set(k, line);
    sum += line;
    strong ||= k <= 2 && line > alone * background;
  }
  if (lines.size < 2 && !strong) return null;
  return { mainsHz, foundHz, levelDb: 10 * Math.log10(sum), lines };
}
