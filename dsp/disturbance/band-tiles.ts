import { complexPlan } from '../fft/complex-plan';
import { bandEdges, bandMidpoints } from '../level/bands';
import { decimate } from './decimate';

/** A third-octave as the tiles see it. */
export interface TileBand {
  readonly midHz: number;
  readonly lowHz: number;
  readonly highHz: number;
  /** Length of the frame's window, and width of its spectral lines to either side. */
  readonly windowSeconds: number;
  readonly leakHz: number;
}

/** Mean square of a signal in third-octaves and frames of time. */
export interface BandTiles {
  readonly bands: readonly TileBand[];
  /** Middle of frame n stands at n·hop samples. */
  readonly hop: number;
  readonly frames: number;
  /** power[band·frames + frame]. */
  readonly power: Float64Array;
}

/** Longer windows for lower bands, read at every so many frames and held between. */
const tiers = [
  { fromHz: 0, seconds: 0.34, stride: 4, thinned: true },
  { fromHz: 75, seconds: 0.085, stride: 2, thinned: true },
  { fromHz: 600, seconds: 0.0213, stride: 1, thinned: false },
] as const;
const thinnedHz = 3000;
const lowestHz = 16;
const highestHz = 16_000;
const mids = [...bandMidpoints(lowestHz * 0.98, highestHz * 1.02, 3)];
/** Half the main lobe of the window, in lines. */
const lobeLines = 4;

/**
 * Third-octaves from 16 Hz to 16 kHz in frames about 11 ms apart. Windows (four terms, side lobes
 * 98 dB down) are 21 ms long above 600 Hz, 85 ms above 75 Hz, 0.34 s below. Outside the signal is
 * silence. Frames run from sample 0 to the last. Rates from 40 kHz up.
 */
export function bandTiles(signal: Float64Array, sampleRate: number): BandTiles {
  const factor = Math.max(1, Math.round(sampleRate / thinnedHz));
  const hop = factor * Math.round((0.0107 * sampleRate) / factor);
  const frames = Math.floor(signal.length / hop) + 1;
  const thin = decimate(signal, factor);
  const power = new Float64Array(mids.length * frames);
  const bands: TileBand[] = [];
  for (const [t, tier] of tiers.entries()) {
    const end = tiers[t + 1]?.fromHz ?? Infinity;
    const own = mids.filter((hz) => hz >= tier.fromHz && hz < end);
    const rate = tier.thinned ? sampleRate / factor : sampleRate;
    const size = 2 ** Math.round(Math.log2(tier.seconds * rate));
    const { stride } = tier;
    const sums = { first: bands.length, mids: own, rate, size, stride };
    const step = tier.thinned ? hop / factor : hop;
    addTier(power, frames, tier.thinned ? thin : signal, step, sums);
    for (const midHz of own) {
      const [lowHz, highHz] = bandEdges(midHz, 3);
      const leakHz = (lobeLines * rate) / size;
      const windowSeconds = size / rate + ((stride - 1) * hop) / sampleRate;
      bands.push({ midHz, lowHz, highHz, windowSeconds, leakHz });
    }
  }
  return { bands, hop, frames, power };
}

interface Tier {
  readonly first: number;
  readonly mids: readonly number[];
  readonly rate: number;
  readonly size: number;
  readonly stride: number;
}

function addTier(
  power: Float64Array,
  frames: number,
  signal: Float64Array,
  step: number,
  { first, mids, rate, size, stride }: Tier,
): void {
  const window = windowOf(size);
  const bands = sharesFor(mids, size, rate);
  const firstLine = Math.min(...bands.map(({ line }) => line));
  const endLine = Math.max(...bands.map(({ line, share }) => line + share.length));
  const lineCount = Math.max(0, endLine - firstLine);
  const [lines, nextLines] = [new Float64Array(lineCount), new Float64Array(lineCount)];
  const plan = complexPlan(size);
  const spectrum = new Float64Array(2 * size);
  // Two frames a transform, as real and imaginary part.
  for (let frame = 0; frame < frames; frame += 2 * stride) {
    const next = frame + stride;
    windowPair(plan.work, signal, frame * step - size / 2, next * step - size / 2, window);
    plan.forward(spectrum, plan.work);
    powersOf(spectrum, firstLine, lines, nextLines);
    holdFrame(power, frames, frame, stride, first, bands, lines, firstLine);
    if (next < frames) holdFrame(power, frames, next, stride, first, bands, nextLines, firstLine);
  }
}

/** Powers of the bands in a frame, kept for those near it that none are read for. */
function holdFrame(
  power: Float64Array,
  frames: number,
  frame: number,
  stride: number,
  first: number,
  bands: readonly LineShares[],
  lines: Float64Array,
  firstLine: number,
): void {
  const start = Math.max(0, frame - (stride >> 1));
  const until = Math.min(frames, frame + stride);
  for (let b = 0; b < bands.length; b++) {
    const row = (first + b) * frames;
    const sum = weighedSum(bands[b] ?? noLines, lines, firstLine);
    for (let n = start; n < until; n++) power[row + n] = sum;
  }
}

/** Two stretches of the signal, windowed, as real and imaginary part of `work`; see windowInto. */
function windowPair(
  work: Float64Array,
  signal: Float64Array,
  first: number,
  second: number,
  window: Float64Array,
): void {
  if (first < 0 || second + window.length > signal.length) {
    windowInto(work, 0, signal, first, window);
    windowInto(work, 1, signal, second, window);
    return;
  }
  for (let n = 0; n < window.length; n++) {
    const gain = window[n] ?? 0;
    work[2 * n] = gain * (signal[first + n] ?? 0);
    work[2 * n + 1] = gain * (signal[second + n] ?? 0);
  }
}

/** A stretch of the signal from `from` on, zeros outside it, windowed, as one part of `work`. */
function windowInto(
  work: Float64Array,
  part: number,
  signal: Float64Array,
  from: number,
  window: Float64Array,
): void {
  const size = window.length;
  // Reading beyond an array's ends is slow.
  const begin = Math.min(Math.max(0, -from), size);
  const end = Math.min(Math.max(begin, signal.length - from), size);
  for (let n = 0; n < begin; n++) work[2 * n + part] = 0;
  for (let n = begin; n < end; n++) {
    work[2 * n + part] = (window[n] ?? 0) * (signal[from + n] ?? 0);
  }
  for (let n = end; n < size; n++) work[2 * n + part] = 0;
}

/** |X|² of the lines from `firstLine` on of the real and of the imaginary part transformed. */
function powersOf(
  spectrum: Float64Array,
  firstLine: number,
  ofReal: Float64Array,
  ofImaginary: Float64Array,
): void {
  const mask = spectrum.length - 1;
  for (let k = 0; k < ofReal.length; k++) {
    const at = 2 * (firstLine + k);
    const mirror = (spectrum.length - at) & mask;
    const a = spectrum[at] ?? 0;
    const b = spectrum[at + 1] ?? 0;
    const c = spectrum[mirror] ?? 0;
    const d = spectrum[mirror + 1] ?? 0;
    ofReal[k] = 0.25 * ((a + c) * (a + c) + (b - d) * (b - d));
    ofImaginary[k] = 0.25 * ((a - c) * (a - c) + (b + d) * (b + d));
  }
}

/**
 * Power of a band, of values that begin with `firstLine`: Σ share[k]·values[k], in four sums that do
 * not wait for each other.
 */
function weighedSum(
  { line, share: weights }: LineShares,
  values: Float64Array,
  firstLine: number,
): number {
  const from = line - firstLine;
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  let k = 0;
  for (; k + 4 <= weights.length; k += 4) {
    a += (weights[k] ?? 0) * (values[from + k] ?? 0);
    b += (weights[k + 1] ?? 0) * (values[from + k + 1] ?? 0);
    c += (weights[k + 2] ?? 0) * (values[from + k + 2] ?? 0);
    d += (weights[k + 3] ?? 0) * (values[from + k + 3] ?? 0);
  }
  for (; k < weights.length; k++) a += (weights[k] ?? 0) * (values[from + k] ?? 0);
  return a + b + (c + d);
}

const noLines = { line: 0, share: new Float64Array(0) };

type LineShares = ReturnType<typeof lineShares>;
/** Shares last used, newest last: a take needs three tiers of one or two rates. */
const knownShares = new Map<string, readonly LineShares[]>();
const keptShares = 6;

function sharesFor(mids: readonly number[], size: number, rate: number): readonly LineShares[] {
  const key = [size, rate, ...mids].join(' ');
  const shares = knownShares.get(key) ?? mids.map((mid) => lineShares(mid, size, rate));
  knownShares.delete(key);
  knownShares.set(key, shares);
  for (const oldest of knownShares.keys()) {
    if (knownShares.size <= keptShares) break;
    knownShares.delete(oldest);
  }
  return shares;
}

/** Lines of a band, those at its edges in part, scaled so that white noise gives its mean square. */
function lineShares(midHz: number, size: number, rate: number) {
  const [low, high] = bandEdges(midHz, 3).map((hz) => (hz * size) / rate) as [number, number];
  const line = Math.ceil(low - 0.5);
  const share = Float64Array.from({ length: Math.floor(high + 0.5) - line + 1 }, (_, k) => {
    const covered = Math.min(high, line + k + 0.5) - Math.max(low, line + k - 0.5);
    return (2 / size) * Math.max(0, covered);
  });
  return { line, share };
}

const windows = new Map<number, Float64Array>();

/** Four-term window of unit energy. Source: Nuttall, IEEE ASSP 29 (1981). */
function windowOf(size: number): Float64Array {
  const known = windows.get(size);
  if (known) return known;
  const window = Float64Array.from({ length: size }, (_, n) => {
    const x = (2 * Math.PI * (n + 0.5)) / size;
    return (
      0.3635819 -
      0.4891775 * Math.cos(x) +
      0.1365995 * Math.cos(2 * x) -
      0.0106411 * Math.cos(3 * x)
    );
  });
  const energy = window.reduce((sum, value) => sum + value * value, 0);
  const scaled = window.map((value) => value / Math.sqrt(energy));
  windows.set(size, scaled);
  return scaled;
}
