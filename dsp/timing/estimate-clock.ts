import type { AlignedMark } from './align-marks';
import type { Clock, ClockStep, SegmentClock } from './clock';
import { fitSlope, type FitPoint } from './fit-slope';
import type { MarkFinding } from './mark-finding';
import { findConsensus, type MarkInterval } from './skew-consensus';

interface Mark {
  /** Index in the schedule. */
  readonly index: number;
  /** Scheduled position times the ratio of the nominal rates. */
  readonly due: number;
  readonly at: AlignedMark;
}

/** Half-width of the interval of a skew that could not be measured, ppm. */
const unknownSkewPpm = 300;
/** A mark that matches less than this share of the median match may be misplaced. */
const doubtfulMatch = 0.75;
/** What a mark's position is worth beside its noise: the room is never quite still. */
const floorSamples = 0.004;

/**
 * Clock of a capture from its marks: the skew with which most intervals agree, intervals that
 * differ by more than three samples taken as lost (+) or repeated (−) audio, then least squares
 * with those steps as unknowns; every segment aligned by its own opening mark and that skew.
 * Where few intervals contradict each other, `judge` (see sweepSharpness) decides between their
 * skews. `markStarts` in samples of the stimulus clock. Throws RangeError when markStarts and the finding
 * differ in length or no mark was found.
 */
export function estimateClock(
  finding: MarkFinding,
  markStarts: readonly number[],
  judge?: (skew: number) => number,
): Clock {
  const { captureRate, stimulusRate } = finding;
  if (markStarts.length !== finding.marks.length) {
    throw new RangeError(
      `markStarts must match ${finding.marks.length} marks, got ${markStarts.length}`,
    );
  }
  const nominal = captureRate / stimulusRate;
  const marks: Mark[] = [];
  for (const [index, at] of finding.marks.entries()) {
    if (at) marks.push({ index, due: (markStarts[index] ?? 0) * nominal, at });
  }
  if (marks.length === 0) throw new RangeError('a clock needs at least one mark, got none');
  const kept = dropMisplaced(marks, captureRate);
  const { agrees, rivals } = findConsensus(intervalsOf(kept), captureRate, judge);
  let group = 0;
  const points = kept.map((mark, k): FitPoint => {
    if (k > 0 && agrees[k - 1] !== true) group++;
    const deviation = Math.hypot(Math.min(mark.at.deviation, 100), floorSamples);
    return { x: mark.due, y: mark.at.position - mark.due, deviation, group };
  });
  const fit = fitSlope(points);
  const skewKnown = fit.slopeDeviation < Infinity;
  const skew = skewKnown ? fit.slope : 0;
  const half = skewKnown ? fit.slopeDeviation * fit.quantile * 1e6 : unknownSkewPpm;
  const steps = kept.slice(1).flatMap((mark, k): ClockStep[] => {
    const before = kept[k];
    if (!before || agrees[k] === true) return [];
    return [stepBetween(before, mark, skew, half * 1e-6)];
  });
  return {
    captureRate,
    stimulusRate,
    ratio: nominal * (1 + skew),
    skewPpm: skew * 1e6,
    skewInterval: [
      Math.min(skew * 1e6 - half, ...rivals.map((rival) => rival * 1e6)),
      Math.max(skew * 1e6 + half, ...rivals.map((rival) => rival * 1e6)),
    ],
    skewKnown,
    steps,
    segments: markStarts.map((start, index) =>
      placeSegment(index, start, kept, points, fit.scale, steps, nominal, skew),
    ),
  };
}

function intervalsOf(marks: readonly Mark[]): MarkInterval[] {
  return marks.slice(1).map((mark, k) => ({
    due: mark.due - (marks[k]?.due ?? 0),
    taken: mark.at.position - (marks[k]?.at.position ?? 0),
  }));
}

/** Leaves out poorly matching marks whose two intervals disagree and together agree. */
function dropMisplaced(marks: readonly Mark[], captureRate: number): readonly Mark[] {
  const matches = marks.map(({ at }) => at.match).sort((a, b) => a - b);
  const usual = matches[matches.length >> 1] ?? 0;
  let kept = marks;
  for (const mark of marks) {
    if (mark.at.match > doubtfulMatch * usual) continue;
    const without = kept.filter((other) => other !== mark);
    if (without.length < 2) break;
    const count = (list: readonly Mark[]) =>
      findConsensus(intervalsOf(list), captureRate).agrees.filter((agrees) => !agrees).length;
    if (count(without) < count(kept)) kept = without;
  }
  return kept;
}

function stepBetween(before: Mark, after: Mark, skew: number, skewHalf: number): ClockStep {
  const due = after.due - before.due;
  const lost = due * (1 + skew) - (after.at.position - before.at.position);
  const noise = Math.hypot(before.at.deviation, after.at.deviation, floorSamples);
  const half = Math.hypot(1.645 * Math.min(noise, 100), due * skewHalf);
  const samples = Math.abs(lost);
  return {
    interval: before.index,
    lastInterval: after.index - 1,
    kind: lost > 0 ? 'lost' : 'repeated',
    samples,
    interval90: [samples - half, samples + half],
  };
}

function placeSegment(
  index: number,
  stimulusAt: number,
  marks: readonly Mark[],
  points: readonly FitPoint[],
  scale: number,
  steps: readonly ClockStep[],
  nominal: number,
  skew: number,
): SegmentClock {
  let nearest = 0;
  for (const [k, mark] of marks.entries()) {
    if (Math.abs(mark.index - index) < Math.abs((marks[nearest]?.index ?? 0) - index)) nearest = k;
  }
  const mark = marks[nearest];
  const moved = mark ? (stimulusAt * nominal - mark.due) * (1 + skew) : 0;
  const own = mark?.index === index;
  const [low, high] = [Math.min(index, mark?.index ?? 0), Math.max(index, mark?.index ?? 0) - 1];
  const crossed = steps.some((step) => step.interval <= high && step.lastInterval >= low);
  const inside = index > (marks[0]?.index ?? 0) && index < (marks.at(-1)?.index ?? 0);
  const here = steps.find((step) => step.interval <= index && step.lastInterval >= index);
  return {
    stimulusAt,
    captureAt: (mark?.at.position ?? 0) + moved,
    standing: own ? 'marked' : inside && !crossed ? 'between' : 'doubtful',
    deviation: (points[nearest]?.deviation ?? 0) * scale,
    lostSamples: here ? (here.kind === 'lost' ? here.samples : -here.samples) : 0,
  };
}
