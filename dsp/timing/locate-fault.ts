import { sweepRateSeconds, type SweepSpec } from '../signal/sweep';
import { alignmentScore } from './alignment-score';
import { findClicks } from './click-scores';
import { captureSample, type Clock } from './clock';
import { findCopy } from './find-copy';
import { joinHalves } from './repair-segment';
import { resampleToStimulus } from './resample';
import type { Samples } from '../signal/samples';

/** Where audio was lost or repeated within a segment. */
export interface FaultPlace {
  /** The wave jumps here: capture sample. */
  readonly atSample: number;
  /** Half the width of the stretch it may lie in, capture samples. */
  readonly reachSamples: number;
  /** What the sweep had reached there, Hz; outside the sweep its first or last frequency. */
  readonly sweepHz: number;
  /** 'copy': the same samples twice; 'click': a jump was heard; 'alignment': only the halves fit. */
  readonly found: 'copy' | 'click' | 'alignment';
  /** How far it stands out: spreads for a click, percent of the alignment's score else. */
  readonly score: number;
}

const leastClick = 4;
const sureClick = 6;
const mostClicks = 5;
const gridSteps = 14;
/** Share by which the halves must fit better than a segment without a joint does, … */
const leastGain = 0.03;
/** … and by which they must when no click confirms it; how exact the place then is, seconds. */
const leastSoleGain = 0.12;
const soleReachSeconds = 0.03;
/** A click may fit worse than the best place on the grid by so much. */
const clickSlack = 0.008;
const tailSeconds = 0.1;
const leadSeconds = 0.1;

/**
 * Where in segment `index` audio was lost or repeated, as its two marks say. A repeated buffer is
 * found as an exact copy. Else joints are tried where something clicks away from the sweep's
 * frequency and on a grid over the sweep: before the joint by the opening mark, after it by the
 * closing one, and the joint is where all octaves of the response agree on one moment. Null when
 * the segment shows no step, lacks a closing mark, or nothing stands out, as when the fault lies
 * outside the sweep. `sweepStart` is the stimulus sample where the sweep starts. Throws RangeError
 * for a segment that is not there.
 */
export function locateFault(
  capture: Samples,
  clock: Clock,
  index: number,
  sweep: SweepSpec,
  sweepStart: number,
): FaultPlace | null {
  const lost = clock.segments[index]?.lostSamples ?? 0;
  const from = captureSample(clock, index, sweepStart);
  if (lost === 0 || clock.segments[index + 1]?.standing !== 'marked') return null;
  if (clock.segments[index]?.standing !== 'marked') return null;
  const { ratio, captureRate } = clock;
  const octaveSeconds = sweepRateSeconds(sweep);
  const hzAt = (sample: number): number => {
    const seconds = (sample - from) / ratio / sweep.sampleRate;
    const hz = sweep.startHz * Math.exp(seconds / octaveSeconds);
    return Math.min(Math.max(hz, sweep.startHz), sweep.endHz);
  };
  const to = captureSample(clock, index + 1, sweepStart + sweep.lengthSamples);
  const copy = lost < -0.5 ? copyOf(capture, clock, index, Math.round(-lost)) : null;
  if (copy !== null) {
    return { atSample: copy, reachSamples: 1, sweepHz: hzAt(copy), found: 'copy', score: 100 };
  }
  const joints = scoreJoints(capture, clock, index, sweep, sweepStart);
  const end = to + tailSeconds * captureRate;
  const clicks = findClicks(capture, captureRate, from, end, hzAt, leastClick).slice(0, mostClicks);
  const whole = Math.max(joints(0), joints(sweep.lengthSamples));
  const grid = bestOnGrid(joints, sweep.lengthSamples);
  const tried = clicks
    .map((click) => ({ ...click, fit: joints((click.sample - from) / ratio) }))
    .sort((a, b) => b.fit - a.fit);
  const best = tried[0];
  const fit = Math.max(grid.fit, best?.fit ?? 0);
  const frame = (128 * captureRate) / 48_000;
  if (fit < (1 + leastGain) * whole) {
    // Nothing to choose between early joints: the lowest octaves hardly tell.
    const loud = tried
      .filter((click) => click.fit >= 0.99 * whole && click.score >= sureClick)
      .sort((a, b) => b.score - a.score)[0];
    if (!loud) return null;
    const { sample, score } = loud;
    return { atSample: sample, reachSamples: frame, sweepHz: hzAt(sample), found: 'click', score };
  }
  if (best && best.fit >= (1 - clickSlack) * fit) {
    const { sample, score } = best;
    return { atSample: sample, reachSamples: frame, sweepHz: hzAt(sample), found: 'click', score };
  }
  if (fit < (1 + leastSoleGain) * whole) return null;
  const atSample = from + grid.at * ratio;
  return {
    atSample,
    reachSamples: soleReachSeconds * captureRate,
    sweepHz: hzAt(atSample),
    found: 'alignment',
    score: 100 * (grid.fit / whole - 1),
  };
}

/** Score of the segment joined at a stimulus sample after the sweep's start. */
function scoreJoints(
  capture: Samples,
  clock: Clock,
  index: number,
  sweep: SweepSpec,
  sweepStart: number,
): (joint: number) => number {
  const lost = (clock.segments[index]?.lostSamples ?? 0) / clock.ratio;
  const lead = Math.round(leadSeconds * sweep.sampleRate + Math.abs(lost));
  const length = lead + sweep.lengthSamples + Math.round(0.4 * sweep.sampleRate);
  const read = (mark: number): Float64Array =>
    resampleToStimulus(capture, clock, mark, sweepStart - lead, length);
  const before = read(index);
  const after = read(index + 1);
  return (joint) => {
    const at = Math.round(joint) + lead;
    const joined = joinHalves(before, after, at, at + Math.max(0, Math.round(lost)));
    return alignmentScore(joined.samples, lead, sweep);
  };
}

/** Best joint on a grid over the sweep, then by halving steps around it. */
function bestOnGrid(score: (joint: number) => number, length: number) {
  let step = length / gridSteps;
  let best = { at: 0, fit: -Infinity };
  const consider = (at: number): void => {
    const fit = score(at);
    if (fit > best.fit) best = { at, fit };
  };
  for (let k = 1; k < gridSteps; k++) consider(k * step);
  while (step > length / 500) {
    step /= 2;
    const middle = best.at;
    for (const at of [middle - step, middle + step]) if (at > 0 && at < length) consider(at);
  }
  return best;
}

/** Exact copy between the segment's marks. */
function copyOf(capture: Samples, clock: Clock, index: number, lag: number): number | null {
  const from = Math.floor(clock.segments[index]?.captureAt ?? 0);
  const to = Math.ceil(clock.segments[index + 1]?.captureAt ?? 0);
  return findCopy(capture, from, to, lag);
}
