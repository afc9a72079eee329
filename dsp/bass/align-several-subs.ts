import type { FilterSpec } from '../filter/analogue';
import { throughPath } from './electrical-path';
import { checkSeats } from './predict-sum';
import { sixthOctaves } from './sixth-octaves';
import { fieldsOf, type SeatSpread, type SubSetting } from './seat-spread';
import {
  descend,
  judgeSettings,
  type SubGrid,
  type SubProblem,
  type SubSolution,
} from './sub-search';
import { subArrivals, subStarts } from './sub-starts';
import type { SeatTransfers } from './transfer';

export interface SeveralSubsOptions {
  readonly hz: Float64Array;
  /** Default 25 to 100 Hz. */
  readonly bandHz?: readonly [number, number];
  /** Low-pass of all subs, in series; default none. */
  readonly lowPass?: readonly FilterSpec[];
  /** What is set now; default no delay, no gain, not inverted. */
  readonly wired?: readonly SubSetting[];
  /** Most that a delay may differ from the first sub's; default 0.03. */
  readonly mostDelaySeconds?: number;
  /** Most that a gain may differ from the first sub's; default 6. */
  readonly mostGainDb?: number;
  /** Whether the processor can turn subs over; default true. */
  readonly canInvert?: boolean;
}

/** Subs set against each other. */
export interface SubsAlignment extends SeatSpread {
  /** One per sub; the first, which the others are set against, keeps its setting. */
  readonly settings: readonly SubSetting[];
  readonly unchanged: boolean;
  readonly wired: SeatSpread;
  /** What the first sub alone gives. */
  readonly alone: SeatSpread;
  /** One seat does not differ from itself: only the level was looked at. More seats settle it. */
  readonly doubt: 'one seat' | null;
}

const coarse = { delaySeconds: 0.001, gainDb: 3 };
const fine = { delaySeconds: 0.0001, gainDb: 1, reachSeconds: 0.001, reachDb: 2 };
const mostSubs = 4;
const plain: SubSetting = { delaySeconds: 0, gainDb: 0, inverted: false };

/**
 * Delays, gains and polarities of two to four subs that make the bass even from seat to seat and
 * waste little of it: the least of seat deviation − 0.03 · level (spreadOf) from 25 to 100 Hz, on a
 * grid of ±30 ms by 1 ms, ±6 dB by 3 and both polarities, then ±1 ms by 0.1 and ±2 dB by 1 round
 * what was found. Two subs: the whole grid. Three and four: one sub after another, from several
 * starts (subStarts). Deterministic; never worse than what is set now. Throws RangeError for other
 * counts, seats that differ, other grids or silence. Own method; accuracy: tests/accuracy.
 */
export function alignSeveralSubs(
  subs: readonly SeatTransfers[],
  options: SeveralSubsOptions,
): SubsAlignment {
  const { mostDelaySeconds = 0.03, mostGainDb = 6, canInvert = true } = options;
  const { hz, bandHz = [25, 100] } = options;
  const { problem, wired } = prepareSubs(subs, options);
  const [first = plain] = wired.settings;
  // Both relative to the first sub, within what the processor may differ.
  const delays = (middle: number, reach: number, step: number): number[] =>
    steps(middle - first.delaySeconds, reach, step, mostDelaySeconds, first.delaySeconds);
  const gains = (middle: number, reach: number, step: number): number[] =>
    steps(middle - first.gainDb, reach, step, mostGainDb, first.gainDb);
  const whole: SubGrid = {
    delaysSeconds: delays(first.delaySeconds, mostDelaySeconds, coarse.delaySeconds),
    gainsDb: gains(first.gainDb, mostGainDb, coarse.gainDb),
    polarities: canInvert ? [false, true] : [false],
  };
  const near = ({ delaySeconds, gainDb, inverted }: SubSetting): SubGrid => ({
    delaysSeconds: delays(delaySeconds, fine.reachSeconds, fine.delaySeconds),
    gainsDb: gains(gainDb, fine.reachDb, fine.gainDb),
    polarities: [inverted],
  });
  const starts =
    subs.length === 2 ? [wired] : subStarts(problem, wired, whole, subArrivals(subs, hz, bandHz));
  const best = starts
    .map((start) =>
      descend(
        problem,
        descend(problem, start, () => whole),
        near,
      ),
    )
    .reduce((a, b) => (b.spread.cost < a.spread.cost ? b : a));
  const justOne = { ...problem, fields: problem.fields.slice(0, 1) };
  return {
    ...best.spread,
    settings: best.settings,
    unchanged: !(best.spread.cost < wired.spread.cost),
    wired: wired.spread,
    alone: judgeSettings(justOne, [first]).spread,
    doubt: subs[0]?.length === 1 ? 'one seat' : null,
  };
}

/** What given settings of the same subs give. Throws as alignSeveralSubs does. */
export function judgeSubs(
  subs: readonly SeatTransfers[],
  settings: readonly SubSetting[],
  options: SeveralSubsOptions,
): SeatSpread {
  return prepareSubs(subs, { ...options, wired: settings }).wired.spread;
}

function prepareSubs(
  subs: readonly SeatTransfers[],
  options: SeveralSubsOptions,
): { readonly problem: SubProblem; readonly wired: SubSolution } {
  const { hz, bandHz: [lowHz, highHz] = [25, 100], lowPass = [], wired } = options;
  const [first] = subs;
  if (!first || subs.length < 2 || subs.length > mostSubs) {
    throw new RangeError(`subs must be 2 to ${mostSubs}, got ${subs.length}`);
  }
  for (const sub of subs) checkSeats(first, sub, hz);
  const settings = wired ?? subs.map(() => plain);
  if (settings.length !== subs.length) {
    throw new RangeError(`settings must be ${subs.length}, got ${settings.length}`);
  }
  const bands = sixthOctaves(hz, lowHz, highHz);
  const played = subs.map((sub) => throughPath(sub, { filters: lowPass }, hz));
  const problem = { fields: fieldsOf(played, bands), bands };
  return { problem, wired: judgeSettings(problem, settings) };
}

/** Steps round a middle, none farther than `most` from 0, all moved by `from`. */
function steps(middle: number, reach: number, step: number, most: number, from: number): number[] {
  const count = Math.floor(reach / step + 1e-9);
  return Array.from({ length: 2 * count + 1 }, (_, n) => middle + (n - count) * step)
    .filter((value) => Math.abs(value) <= most + 1e-9)
    .map((value) => from + value);
}
