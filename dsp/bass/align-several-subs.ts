import type { FilterSpec } from '../filter/analogue';
import { seededRandom } from '../signal/random';
import { bandEnvelope, envelopeOnset } from './band-envelope';
import { throughPath } from './electrical-path';
import { logBand } from './log-band';
import { checkSeats } from './predict-sum';
import { fieldsOf, type SeatSpread, type SubSetting } from './seat-spread';
import {
  bestOfSub,
  descend,
  judgeSettings,
  type SubGrid,
  type SubProblem,
  type SubSolution,
} from './sub-search';
import type { SeatTransfers } from './transfer';

export interface SeveralSubsOptions {
  readonly hz: Float64Array;
  /** Default 25 to 100 Hz. */
  readonly bandHz?: readonly [number, number];
  /** Low-pass of all subs, in series; default none. */
  readonly lowPass?: readonly FilterSpec[];
  /** What is set now; default no delay, no gain, not inverted. Gains are kept in range. */
  readonly wired?: readonly SubSetting[];
  /** Most that a delay may differ from the first sub's; default 0.02. */
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
  /** One seat does not differ from itself, so that only the level was looked at. */
  readonly doubt: 'one seat' | null;
}

const coarse = { delaySeconds: 0.001, gainDb: 3 };
const fine = { delaySeconds: 0.0001, gainDb: 1, reachSeconds: 0.001, reachDb: 2 };
const randomStarts = 4;
const mostSubs = 4;
const onsetShare = 0.3;

/**
 * Delays, gains and polarities of two to four subs that make the bass even from seat to seat and
 * waste little of it: the least of seat deviation − 0.25 · level (spreadOf) from 25 to 100 Hz, on a
 * grid of ±20 ms by 1 ms, ±6 dB by 3 and both polarities, then ±1 ms by 0.1 and ±2 dB by 1 round
 * what was found. Two subs: the whole grid. Three and four: one sub after another, from what is
 * set now, from equal arrival, from one sub added at a time and from four seeded random settings.
 * Deterministic; never worse than what is set now. Throws RangeError for other counts, seats that
 * differ, other grids or silence. Own method; accuracy: tests/accuracy.
 */
export function alignSeveralSubs(
  subs: readonly SeatTransfers[],
  options: SeveralSubsOptions,
): SubsAlignment {
  const { mostDelaySeconds = 0.02, mostGainDb = 6, canInvert = true } = options;
  const { problem, wired } = prepareSubs(subs, options);
  const polarities = canInvert ? [false, true] : [false];
  const [first = plain] = wired.settings;
  const within = (middle: number, reach: number, step: number, most: number): number[] => {
    const count = Math.round(reach / step);
    return Array.from({ length: 2 * count + 1 }, (_, n) => middle + (n - count) * step).filter(
      (value) => Math.abs(value) <= most + 1e-9,
    );
  };
  const delays = within(0, mostDelaySeconds, coarse.delaySeconds, mostDelaySeconds);
  const gains = within(0, mostGainDb, coarse.gainDb, mostGainDb);
  const whole: SubGrid = {
    delaysSeconds: delays.map((delay) => first.delaySeconds + delay),
    gainsDb: gains.map((gain) => first.gainDb + gain),
    polarities,
  };
  const near = ({ delaySeconds, gainDb, inverted }: SubSetting): SubGrid => ({
    delaysSeconds: within(
      delaySeconds - first.delaySeconds,
      fine.reachSeconds,
      fine.delaySeconds,
      mostDelaySeconds,
    ).map((delay) => first.delaySeconds + delay),
    gainsDb: within(gainDb - first.gainDb, fine.reachDb, fine.gainDb, mostGainDb).map(
      (gain) => first.gainDb + gain,
    ),
    polarities: [inverted],
  });
  const starts = subs.length === 2 ? [wired] : startsOf(problem, wired, whole, subs, options);
  const best = starts
    .map((start) => descend(problem, descend(problem, start, () => whole), near))
    .reduce((a, b) => (b.spread.cost < a.spread.cost ? b : a));
  const { spread: alone } = judgeSettings(
    { ...problem, fields: problem.fields.slice(0, 1) },
    [first],
  );
  return {
    ...best.spread,
    settings: best.settings,
    unchanged: !(best.spread.cost < wired.spread.cost),
    wired: wired.spread,
    alone,
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

const plain: SubSetting = { delaySeconds: 0, gainDb: 0, inverted: false };

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
  const band = logBand(hz, lowHz, highHz);
  const played = subs.map((sub) => throughPath(sub, { filters: lowPass }, hz));
  const problem = {
    fields: fieldsOf(played, band),
    bandHz: hz.slice(band.first, band.end),
    weights: band.weights,
  };
  return { problem, wired: judgeSettings(problem, settings) };
}

/** Where the descents of three and four subs begin. */
function startsOf(
  problem: SubProblem,
  wired: SubSolution,
  whole: SubGrid,
  subs: readonly SeatTransfers[],
  { hz, bandHz: [lowHz, highHz] = [25, 100] }: SeveralSubsOptions,
): SubSolution[] {
  const [first = plain] = wired.settings;
  const onsets = subs.map(([seat]) =>
    seat ? envelopeOnset(bandEnvelope(seat, { hz, lowHz, highHz }), onsetShare) : null,
  );
  const arrived = subs.map((_, i) => {
    const wait = (onsets[0] ?? 0) - (onsets[i] ?? onsets[0] ?? 0);
    return i === 0 ? first : { ...plain, delaySeconds: first.delaySeconds + wait };
  });
  const random = seededRandom(subs.length);
  const pick = <T>(all: readonly T[], otherwise: T): T =>
    all[Math.floor(all.length * random())] ?? otherwise;
  const drawn = Array.from({ length: randomStarts }, () =>
    subs.map((_, i) =>
      i === 0
        ? first
        : {
            delaySeconds: pick(whole.delaysSeconds, 0),
            gainDb: pick(whole.gainsDb, 0),
            inverted: pick(whole.polarities, false),
          },
    ),
  );
  return [
    wired,
    addedOneByOne(problem, first, whole),
    ...[arrived, ...drawn].map((settings) => judgeSettings(problem, settings)),
  ];
}

/** The first sub, then each next one set best against those before it. */
function addedOneByOne(problem: SubProblem, first: SubSetting, whole: SubGrid): SubSolution {
  let settings: readonly SubSetting[] = [first];
  for (let count = 2; count <= problem.fields.length; count++) {
    const part = { ...problem, fields: problem.fields.slice(0, count) };
    const start = judgeSettings(part, [...settings, { ...plain, ...first }]);
    settings = bestOfSub(part, start, count - 1, () => whole).settings;
  }
  return judgeSettings(problem, settings);
}
