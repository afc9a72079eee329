import type { AlignedMark } from './align-marks';
import { findConsensus } from './skew-consensus';
import type { MarkFinding } from './mark-finding';

/** Logarithms (base 10) of how much each finding speaks for this take against another one. */
const priorOdds = 1;
const agreeingOdds = 1.1;
const disagreeingOdds = -1;
/** A mark not found where the capture should hold it: the first is often muted, others rarely. */
const firstMissingOdds = -1;
const missingOdds = -1.5;
/** Marks nearer to the capture's ends may be cut off. */
const edgeSeconds = 0.2;

export interface TakeVerdict {
  readonly take: MarkFinding['take'];
  readonly intervals: { agreeing: number; measured: number };
  /** 0 … 1: how far the odds are from even. */
  readonly sureness: number;
}

/**
 * Whether the spacing of the found marks is that of the schedule. Intervals of another take differ
 * by whole milliseconds at random, so one that agrees within some hundred ppm speaks for this take
 * about as much as one with lost audio speaks against it, or a mark that is missing before the first
 * or after the last one found though the capture extends so far; a mark where none was scheduled,
 * between the take's start and one interval after its last mark, decides for another take. A second
 * run of the same take in the capture is no stray.
 */
export function judgeTake(
  marks: readonly (AlignedMark | null)[],
  strayMarks: readonly number[],
  markStarts: readonly number[],
  capture: { readonly length: number; readonly sampleRate: number },
  stimulusRate: number,
): TakeVerdict {
  const nominal = capture.sampleRate / stimulusRate;
  const found: { position: number; due: number }[] = [];
  for (const [k, mark] of marks.entries()) {
    if (mark) found.push({ position: mark.position, due: (markStarts[k] ?? 0) * nominal });
  }
  const gaps = found.slice(1).map(({ position, due }, k) => ({
    due: due - (found[k]?.due ?? 0),
    taken: position - (found[k]?.position ?? 0),
  }));
  const agreeing = findConsensus(gaps, capture.sampleRate).agrees.filter(Boolean).length;
  const strays = countStrays(strayMarks, found, markStarts, nominal);
  const dues = markStarts.map((start) => start * nominal);
  const odds =
    priorOdds +
    agreeingOdds * agreeing +
    disagreeingOdds * (gaps.length - agreeing) +
    oddsOfMissing(dues, found, capture);
  const intervals = { agreeing, measured: gaps.length };
  const sureness = Math.tanh(Math.abs(odds));
  if (strays > 0) return { take: 'other take', intervals, sureness: 1 };
  if (odds < 0) return { take: 'other take', intervals, sureness };
  if (agreeing === 0) return { take: 'unclear', intervals, sureness: 0 };
  return { take: 'this take', intervals, sureness };
}

/** What marks say that lie outside those found, but inside the capture. */
function oddsOfMissing(
  dues: readonly number[],
  found: readonly { position: number; due: number }[],
  capture: { readonly length: number; readonly sampleRate: number },
): number {
  const first = found[0];
  const last = found.at(-1);
  if (!first || !last) return 0;
  let odds = 0;
  for (const [k, due] of dues.entries()) {
    const before = due < first.due;
    if (!before && due <= last.due) continue;
    const near = before ? first : last;
    const place = near.position + due - near.due;
    const margin = edgeSeconds * capture.sampleRate;
    if (place < margin || place > capture.length - margin) continue;
    odds += k === 0 ? firstMissingOdds : missingOdds;
  }
  return odds;
}

/** Strays in the stretch of the capture where the schedule knows of no other marks. */
function countStrays(
  strayMarks: readonly number[],
  found: readonly { position: number; due: number }[],
  markStarts: readonly number[],
  nominal: number,
): number {
  const first = found[0];
  const last = found.at(-1);
  if (!first || !last) return 0;
  const takeStart = first.position - first.due;
  const lastDue = (markStarts.at(-1) ?? 0) * nominal;
  const lastMark = last.position + lastDue - last.due;
  const meanGap = (lastDue - (markStarts[0] ?? 0) * nominal) / (markStarts.length - 1);
  const inTake = strayMarks.filter((at) => at > takeStart && at < lastMark + 1.2 * meanGap);
  const second = strayMarks.filter((at) => at > lastMark);
  const strays = isSameRun(second, markStarts, nominal)
    ? inTake.filter((at) => at <= lastMark)
    : inTake;
  return strays.length;
}

/** Whether strays after the take are the marks of the same take once more. */
function isSameRun(
  strays: readonly number[],
  markStarts: readonly number[],
  nominal: number,
): boolean {
  if (strays.length < 2) return false;
  return strays.slice(1).every((at, k) => {
    const due = ((markStarts[k + 1] ?? Infinity) - (markStarts[k] ?? 0)) * nominal;
    return Math.abs(at - (strays[k] ?? 0) - due) < 0.6e-3 * due;
  });
}
