import type { MarkSpec } from '../signal/mark';
import { alignMarks, type AlignOptions } from './align-marks';
import type { Baseband } from './baseband';
import { markBand } from './mark-band';
import type { MarkFinding } from './mark-finding';
import { judgeTake } from './judge-take';
import { matchPattern, type Candidate } from './mark-pattern';
import { findPeaks, matchTemplate, type Peak } from './match-template';
import type { Samples } from '../signal/samples';

/** Squared match: above it a peak of the bare chirp is tried as the first template. */
const leastSeed = 0.02;
const mostSeeds = 8;
/** All marks are of one speaker: they resemble the bare chirp nearly alike. */
const leastOfSeed = 0.25;
/** Squared match with a received mark that makes a candidate, and one for a place where one is due. */
const leastCandidate = 0.12;
const leastDue = 0.04;
const dueReachSeconds = 0.004;
/**
 * Marks of a capture differ in power by less than this factor, whatever is done to the gain. What
 * resembles one and is weaker is what a quiet room or a filter leaves of another sound.
 */
const mostPowerRatio = 1e3;
/** Peaks nearer to each other than this are one mark. */
const reachSeconds = 0.2;
/** Window of a received mark: a little before, the chirp and some of the room after it. */
const beforeSeconds = 0.005;
const roomSeconds = 0.035;

/**
 * Finds the marks of a take in a capture of any latency, skew up to 500 ppm, with lost or repeated
 * audio, some marks missing. `markStarts` in samples of the stimulus clock. Coarse: normalised
 * matched filter with the bare chirp; the best peaks serve as received templates, with the room in
 * them, and the pattern of the spacings picks the marks. Fine: see alignMarks. A mark's position
 * is where its template stands, the same for all marks of a capture, near the strongest path.
 * `band` where it was made already. Null when nothing in the capture resembles a mark. Throws
 * RangeError for fewer than two starts, starts that do not increase, a mark beyond half the rate, or
 * a rate that is not positive.
 */
export function findMarks(
  capture: Samples,
  sampleRate: number,
  mark: MarkSpec,
  markStarts: readonly number[],
  stimulusRate = mark.sampleRate,
  band = markBand(capture, sampleRate, mark),
): MarkFinding | null {
  checkStarts(markStarts);
  const [lowHz, highHz] = [Math.min(mark.startHz, mark.endHz), Math.max(mark.startHz, mark.endHz)];
  const { base, bare } = band;
  const markSeconds = mark.lengthSamples / mark.sampleRate;
  const options = {
    sampleRate,
    lowHz,
    highHz,
    beforeSeconds,
    afterSeconds: markSeconds + roomSeconds,
  };
  const seconds = markStarts.map((start) => start / stimulusRate);
  const reach = Math.round(reachSeconds * base.rate);
  const seeds = loudOnes(findPeaks(bare, leastSeed, reach), base, markSeconds)
    .sort((a, b) => b.value - a.value)
    .slice(0, mostSeeds);
  const family = findFamily(base, bare, seeds, options, seconds);
  if (!family) return null;
  const { starts, strays } = family;
  const found = [...starts.keys()].filter((k) => starts[k] !== null);
  const coarse = found.map((k) => (starts[k]?.index ?? 0) * base.decimation);
  const values = found.map((k) => starts[k]?.value ?? 0);
  const aligned = alignMarks(capture, coarse, values.indexOf(Math.max(...values)), options);
  const marks = starts.map((start, k) =>
    start === null ? null : (aligned.marks[found.indexOf(k)] ?? null),
  );
  const strayMarks = strays.map((peak) => peak.index * base.decimation);
  const verdict = judgeTake(
    marks,
    strayMarks,
    markStarts,
    { length: capture.length, sampleRate },
    stimulusRate,
  );
  const meanMatch = aligned.marks.reduce((sum, { match }) => sum + match, 0) / found.length;
  return {
    captureRate: sampleRate,
    stimulusRate,
    marks,
    template: aligned.template,
    take: verdict.take,
    intervals: verdict.intervals,
    strayMarks,
    confidence: (found.length / marks.length) * Math.max(0, meanMatch) * verdict.sureness,
  };
}

interface Family {
  /** Per scheduled mark its peak; index is the mark's start in entries of the baseband. */
  readonly starts: readonly (Peak | null)[];
  /** Peaks that resemble the marks but fit no scheduled one. */
  readonly strays: readonly Peak[];
}

/**
 * Tries each seed as the received template and keeps the one whose likes fit the schedule best:
 * first near whatever resembles the bare chirp, and when that does not give all marks, everywhere.
 */
function findFamily(
  base: Baseband,
  bare: Float32Array,
  seeds: readonly Peak[],
  options: AlignOptions,
  markSeconds: readonly number[],
): Family | null {
  const lead = Math.round(options.beforeSeconds * base.rate);
  const width = lead + Math.round(options.afterSeconds * base.rate);
  const reach = Math.round(reachSeconds * base.rate);
  let best: Family | null = null;
  let bestScore = 0;
  const tries = seeds.flatMap((seed) => [
    { seed, near: bare },
    { seed, near: null },
  ]);
  for (const { seed, near } of tries) {
    const from = Math.max(0, seed.index - lead);
    const template = base.samples.subarray(2 * from, 2 * (from + width));
    const match = matchTemplate(base, template, near, leastOfSeed * (seeds[0]?.value ?? 0));
    const loudness = energyFrom(base, seed.index, width);
    const isAsLoud = ({ index }: Peak): boolean => {
      const ratio = energyFrom(base, index, width) / loudness;
      return ratio < mostPowerRatio && ratio > 1 / mostPowerRatio;
    };
    const peaks = findPeaks(match, leastCandidate, reach)
      .map(({ index, value }): Peak => ({ index: index + seed.index - from, value }))
      .filter(isAsLoud);
    const candidates = peaks.map(({ index, value }): Candidate => ({
      seconds: index / base.rate,
      match: Math.sqrt(value),
    }));
    const pattern = matchPattern(candidates, markSeconds);
    const starts = pattern.chosen.map((index) => (index === null ? null : (peaks[index] ?? null)));
    const complete = starts.every((start) => start !== null && start.value > 0.5);
    if ((near && !complete) || pattern.score <= bestScore) continue;
    bestScore = pattern.score;
    const strays = peaks.filter(
      (peak) =>
        peak.value > 0.25 && !starts.some((s) => s && Math.abs(s.index - peak.index) < reach),
    );
    const offset = seed.index - from;
    best = { starts: addDueMarks(starts, match, offset, markSeconds, base.rate), strays };
    if (complete) break;
  }
  return best;
}

/** The peaks that are not far weaker than the loudest of them; a whole mark long each. */
function loudOnes(peaks: readonly Peak[], base: Baseband, seconds: number): Peak[] {
  const width = Math.round(seconds * base.rate);
  const energies = peaks.map(({ index }) => energyFrom(base, index, width));
  const most = energies.reduce((largest, one) => Math.max(largest, one), 0);
  return peaks.filter((_, k) => (energies[k] ?? 0) * mostPowerRatio > most);
}

/** Energy of `width` entries of a baseband from `first` on. */
function energyFrom({ samples }: Baseband, first: number, width: number): number {
  const end = Math.min(2 * (first + width), samples.length);
  let energy = 0;
  for (let n = 2 * Math.max(0, first); n < end; n++) energy += (samples[n] ?? 0) ** 2;
  return energy;
}

/** Looks again, with a lower threshold, where the found marks say that a missing one should be. */
function addDueMarks(
  starts: readonly (Peak | null)[],
  match: Float32Array,
  offset: number,
  markSeconds: readonly number[],
  rate: number,
): (Peak | null)[] {
  return starts.map((start, k) => {
    if (start !== null) return start;
    const near = [...starts.keys()]
      .filter((other) => starts[other] !== null)
      .sort((a, b) => Math.abs(a - k) - Math.abs(b - k))[0];
    if (near === undefined) return null;
    const gap = ((markSeconds[k] ?? 0) - (markSeconds[near] ?? 0)) * rate;
    const due = Math.round((starts[near]?.index ?? 0) + gap - offset);
    const reach = Math.round(dueReachSeconds * rate);
    let index = -1;
    for (let n = Math.max(0, due - reach); n <= due + reach; n++) {
      if ((match[n] ?? 0) > (match[index] ?? leastDue)) index = n;
    }
    return index < 0 ? null : { index: index + offset, value: match[index] ?? 0 };
  });
}

function checkStarts(markStarts: readonly number[]): void {
  if (markStarts.length < 2) {
    throw new RangeError(`markStarts must hold at least two, got ${markStarts.length}`);
  }
  for (const [k, start] of markStarts.entries()) {
    const before = markStarts[k - 1] ?? -Infinity;
    if (!(start > before && start < Infinity)) {
      throw new RangeError(`markStarts must increase, got ${before}, ${start}`);
    }
  }
}
