import type { MarkGain } from './mark-gains';

/** A lasting change of gain. */
export interface GainStep {
  /** Last mark before and first undisturbed mark after it: the segments between are touched. */
  readonly afterMark: number;
  readonly beforeMark: number;
  /** Louder afterwards: positive. */
  readonly db: number;
  readonly sigmaDb: number;
}

const leastDb = 0.25;
/** Standard deviations: more than 3, because every place between two marks is tried. */
const sure = 4.5;

interface Entry {
  readonly mark: number;
  readonly db: number;
  readonly weight: number;
}

/**
 * Where the level of the marks changes for good, in order: the change is beyond 0.25 dB and 4.5
 * standard deviations. Disturbed marks do not take part, so a mark that someone talks over is no
 * step; nor is one that stands alone between others that agree. Source: binary segmentation, Scott
 * and Knott, Biometrics 30 (1974).
 */
export function gainSteps(gains: readonly (MarkGain | null)[]): GainStep[] {
  const entries: Entry[] = [];
  for (const [mark, gain] of gains.entries()) {
    if (gain && !gain.disturbed) entries.push({ mark, db: gain.db, weight: gain.sigmaDb ** -2 });
  }
  const splits = splitsOf(entries, 0).sort((a, b) => a - b);
  return join(entries, withoutOutliers(entries, splits));
}

/** Indices of entries at which a new level begins. */
function splitsOf(entries: readonly Entry[], offset: number): number[] {
  let best = 0;
  let most = 0;
  for (let at = 1; at < entries.length; at++) {
    const { db, sigmaDb } = difference(entries.slice(0, at), entries.slice(at));
    const score = Math.abs(db) / sigmaDb;
    if (score > most) {
      most = score;
      best = at;
    }
  }
  if (best === 0) return [];
  const before = entries.slice(0, best);
  const after = entries.slice(best);
  const { db } = difference(before, after);
  if (most < sure || Math.abs(db) < 0.5 * leastDb) return [];
  return [...splitsOf(before, offset), offset + best, ...splitsOf(after, offset + best)];
}

/** Takes out levels that one mark alone holds between two that agree. */
function withoutOutliers(entries: readonly Entry[], splits: readonly number[]): number[] {
  const kept = [...splits];
  for (let k = 0; k + 1 < kept.length;) {
    const [at, next] = [kept[k] ?? 0, kept[k + 1] ?? 0];
    const before = entries.slice(kept[k - 1] ?? 0, at);
    const after = entries.slice(next, kept[k + 2] ?? entries.length);
    if (next - at === 1 && Math.abs(difference(before, after).db) < leastDb) kept.splice(k, 2);
    else k++;
  }
  return kept;
}

function join(entries: readonly Entry[], splits: readonly number[]): GainStep[] {
  const steps: GainStep[] = [];
  for (const [k, at] of splits.entries()) {
    const before = entries.slice(splits[k - 1] ?? 0, at);
    const after = entries.slice(at, splits[k + 1] ?? entries.length);
    const { db, sigmaDb } = difference(before, after);
    const afterMark = entries[at - 1]?.mark ?? 0;
    const beforeMark = entries[at]?.mark ?? 0;
    if (Math.abs(db) > leastDb && Math.abs(db) > sure * sigmaDb) {
      steps.push({ afterMark, beforeMark, db, sigmaDb });
    }
  }
  return steps;
}

function difference(before: readonly Entry[], after: readonly Entry[]) {
  const mean = (part: readonly Entry[]): readonly [number, number] => {
    let sum = 0;
    let weight = 0;
    for (const entry of part) {
      sum += entry.db * entry.weight;
      weight += entry.weight;
    }
    return [sum / weight, 1 / weight];
  };
  const [a, varianceA] = mean(before);
  const [b, varianceB] = mean(after);
  return { db: b - a, sigmaDb: Math.sqrt(varianceA + varianceB) };
}
