import type { Judged } from './judge-hearing';
import type { ClimbEnd, ClimbRequest } from './sound-level';

/** Steps are never larger, dB. */
export const mostStepDb = 6;
/** Goals and limits are met within this, dB. */
export const nearDb = 0.25;
/** The microphone's peaks stay below, dB re full scale. */
export const mostPeakDb = -12;
/** Peaks so far above come down even when the goal is met, dB. */
const badPeakDb = 1;

/** Goals and limits of a climb. */
export interface Limits extends ClimbRequest {
  /** C-weighted level re full scale that stands for the highest sound level; Infinity if unknown. */
  readonly mostDb: number;
  readonly offsetDb: number;
}

/** How far each goal and each limit still is, dB. */
function distances(
  judged: Judged,
  gainDb: number,
  limits: Limits,
): Readonly<Record<'margin' | 'target' | 'peak' | 'sound' | 'cap', number>> {
  const { marginDb, cWeightedDb } = judged;
  const isHeard = marginDb !== null;
  return {
    margin: isHeard ? limits.marginDb - marginDb : Infinity,
    target:
      isHeard && limits.targetDb !== null
        ? limits.targetDb - cWeightedDb - limits.offsetDb
        : Infinity,
    peak: isHeard ? mostPeakDb - judged.peakDb : Infinity,
    sound: limits.mostDb - cWeightedDb,
    cap: limits.capDb - gainDb,
  };
}

/** Why a climb ends at what is heard now; null when it goes on. */
export function whyEnd(judged: Judged, gainDb: number, limits: Limits): ClimbEnd | null {
  const left = distances(judged, gainDb, limits);
  if (left.peak < -badPeakDb) return 'clipping';
  if (left.margin <= nearDb) return 'margin';
  if (left.target <= nearDb) return 'target';
  if (left.peak <= nearDb) return 'clipping';
  if (left.sound <= nearDb) return 'too loud';
  if (left.cap <= 0.01) return judged.marginDb === null ? 'unheard' : 'cap';
  return null;
}

/** Straight to the nearest goal or limit, 6 dB at most. */
export function nextStep(judged: Judged, gainDb: number, limits: Limits): number {
  return Math.min(mostStepDb, ...Object.values(distances(judged, gainDb, limits)));
}
