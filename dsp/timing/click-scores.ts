import { median } from '../signal/median';
import { nextPowerOfTwo, realSpectrum } from '../fft/fft';
import type { Samples } from '../signal/samples';

/** Frame length and hop at 48 kHz; in proportion at other rates. */
const frameSamples = 256;
const hopSamples = 64;
const medianFrames = 41;
/** Bins above and below these multiples of the sweep's frequency are away from it. */
const aboveShare = 2.5;
const belowShare = 0.4;
const lowestHz = 300;
const highestShare = 0.42;
/** Spread that a frame's level has at least, dB. */
const leastSpreadDb = 0.5;

export interface Click {
  /** Middle of the frame, capture samples. */
  readonly sample: number;
  /** How many times the usual spread the frame rises above its neighbours. */
  readonly score: number;
}

/**
 * Frames of capture[from … to) that sound away from the frequency of the sweep more than their
 * neighbours do: a jump in the wave clicks at all frequencies. Hann frames of 256 samples, hop 64
 * (at 48 kHz); bins above 2.5 times or below 0.4 times `hzAt`; level less its running median over
 * 41 frames, over its median deviation. Peaks with a score of `least` or more, best first.
 */
export function findClicks(
  capture: Samples,
  sampleRate: number,
  from: number,
  to: number,
  hzAt: (sample: number) => number,
  least: number,
): Click[] {
  const size = nextPowerOfTwo((frameSamples * sampleRate) / 48_000 / 1.2);
  const hop = (size * hopSamples) / frameSamples;
  const levels: number[] = [];
  const start = Math.round(from);
  for (let at = start; at + size <= Math.min(to, capture.length); at += hop) {
    levels.push(levelAway(capture, at, size, sampleRate, hzAt(at + size / 2)));
  }
  const half = (medianFrames - 1) / 2;
  const scores = levels.map((level, k) => {
    const near = levels.slice(Math.max(0, k - half), k + half + 1);
    const usual = median(near);
    const spread = 1.4826 * median(near.map((other) => Math.abs(other - usual)));
    return (level - usual) / Math.max(spread, leastSpreadDb);
  });
  const clicks: Click[] = [];
  for (const [k, score] of scores.entries()) {
    const near = scores.slice(Math.max(0, k - 4), k + 5);
    if (score >= least && score >= Math.max(...near)) {
      clicks.push({ sample: start + k * hop + size / 2, score });
    }
  }
  return clicks.sort((a, b) => b.score - a.score);
}

/** Level of one frame away from the sweep, dB. */
function levelAway(
  capture: Samples,
  at: number,
  size: number,
  sampleRate: number,
  sweepHz: number,
): number {
  const frame = new Float64Array(size);
  for (let n = 0; n < size; n++) {
    const value = at + n < 0 ? 0 : (capture[at + n] ?? 0);
    frame[n] = value * 0.5 * (1 - Math.cos((2 * Math.PI * (n + 0.5)) / size));
  }
  const spectrum = realSpectrum(frame, size);
  let power = 0;
  for (let bin = 1; bin < highestShare * size; bin++) {
    const hz = (bin * sampleRate) / size;
    const away = hz > aboveShare * sweepHz || hz < belowShare * sweepHz;
    if (!away || hz < lowestHz) continue;
    power += (spectrum[2 * bin] ?? 0) ** 2 + (spectrum[2 * bin + 1] ?? 0) ** 2;
  }
  return 10 * Math.log10(power + 1e-30);
}
