/** A place in the capture that may hold a mark. */
export interface Candidate {
  readonly seconds: number;
  /** How well it matches a mark, 0 … 1. */
  readonly match: number;
}

export interface PatternMatch {
  /** One entry per scheduled mark: the index of its candidate, or null. */
  readonly chosen: readonly (number | null)[];
  /** Sum of the matches less the penalties for intervals that disagree. */
  readonly score: number;
}

/** What two clocks may differ by, and what a peak's place may be wrong by, without a penalty. */
const largestSkew = 550e-6;
const slackSeconds = 0.5e-3;
/** Audio lost or repeated between two marks, at most; also at most a third of the interval. */
const largestStepSeconds = 0.75;
const stepPenalty = 0.4;

/**
 * Finds which candidates (in order of time) are which marks. Marks may be missing and candidates
 * may be wrong; the time between two chosen ones is that of the schedule within 550 ppm, or, at a
 * penalty, differs by up to 0.75 s of lost or repeated audio. Dynamic programming over pairs of
 * mark and candidate.
 */
export function matchPattern(
  candidates: readonly Candidate[],
  markSeconds: readonly number[],
): PatternMatch {
  const width = candidates.length;
  const scores = new Float64Array(markSeconds.length * width);
  const previous = new Int32Array(scores.length).fill(-1);
  let best = -1;
  for (const [mark, due] of markSeconds.entries()) {
    for (const [index, { seconds, match }] of candidates.entries()) {
      const node = mark * width + index;
      let score = 0;
      for (let from = 0; from < mark * width; from++) {
        const earlier = candidates[from % width];
        const earlierDue = markSeconds[Math.floor(from / width)] ?? 0;
        if (!earlier || earlier.seconds >= seconds) continue;
        const penalty = linkPenalty(seconds - earlier.seconds, due - earlierDue);
        const chained = (scores[from] ?? 0) - penalty;
        if (chained > score) {
          score = chained;
          previous[node] = from;
        }
      }
      scores[node] = score + match;
      if (best < 0 || (scores[node] ?? 0) > (scores[best] ?? 0)) best = node;
    }
  }
  const chosen = new Array<number | null>(markSeconds.length).fill(null);
  for (let node = best; node >= 0; node = previous[node] ?? -1) {
    chosen[Math.floor(node / width)] = node % width;
  }
  return { chosen, score: best < 0 ? 0 : (scores[best] ?? 0) };
}

function linkPenalty(seconds: number, due: number): number {
  const step = Math.abs(seconds - due);
  if (step <= largestSkew * due + slackSeconds) return 0;
  return step <= Math.min(largestStepSeconds, due / 3) ? stepPenalty : Infinity;
}
