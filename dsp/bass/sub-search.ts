import type { SixthOctaves } from './sixth-octaves';
import {
  addSub,
  addTurned,
  silence,
  spreadOf,
  type FieldSum,
  type SeatSpread,
  type SubSetting,
} from './seat-spread';

/** What is tried for each sub but the first. */
export interface SubGrid {
  readonly delaysSeconds: readonly number[];
  readonly gainsDb: readonly number[];
  readonly polarities: readonly boolean[];
}

/** The subs of one question. */
export interface SubProblem {
  readonly fields: readonly FieldSum[];
  readonly bands: SixthOctaves;
}

/** Settings of all subs with what they give. */
export interface SubSolution {
  readonly settings: readonly SubSetting[];
  readonly spread: SeatSpread;
}

/** Rounds of a descent that still finds something better every time. */
const mostRounds = 20;

/** What settings give. */
export function judgeSettings(problem: SubProblem, settings: readonly SubSetting[]): SubSolution {
  const total = settings.reduce((sum, { gainDb }) => sum + 10 ** (gainDb / 20), 0);
  return { settings, spread: spreadOf(sumOf(problem, settings, null), total, problem.bands) };
}

/**
 * Descends from `start`, one sub after another over the whole grid round what `gridFor` gives for
 * its setting, the others held, until a round finds nothing better. The first sub stays. With two
 * subs a round over a grid that does not move tries everything there is.
 */
export function descend(
  problem: SubProblem,
  start: SubSolution,
  gridFor: (setting: SubSetting) => SubGrid,
): SubSolution {
  let best = start;
  for (let round = 0; round < mostRounds; round++) {
    const before = best;
    for (let sub = 1; sub < problem.fields.length; sub++)
      best = bestOfSub(problem, best, sub, gridFor);
    if (!(best.spread.cost < before.spread.cost - 1e-9)) break;
  }
  return best;
}

/** The best setting of one sub on its grid, the others held; `from` where none is better. */
export function bestOfSub(
  problem: SubProblem,
  from: SubSolution,
  sub: number,
  gridFor: (setting: SubSetting) => SubGrid,
): SubSolution {
  const { fields, bands } = problem;
  const own = from.settings[sub];
  const field = fields[sub];
  if (!own || !field) return from;
  const { delaysSeconds, gainsDb, polarities } = gridFor(own);
  const others = sumOf(problem, from.settings, sub);
  const otherGains = from.settings.reduce(
    (sum, { gainDb }, index) => sum + (index === sub ? 0 : 10 ** (gainDb / 20)),
    0,
  );
  const sum = silence(field);
  let best = from;
  for (const delaySeconds of delaysSeconds) {
    const turnRe = bands.hz.map((hz) => Math.cos(2 * Math.PI * hz * delaySeconds));
    const turnIm = bands.hz.map((hz) => -Math.sin(2 * Math.PI * hz * delaySeconds));
    for (const gainDb of gainsDb) {
      const gain = 10 ** (gainDb / 20);
      for (const inverted of polarities) {
        addTurned(sum, others, field, turnRe, turnIm, inverted ? -gain : gain);
        const spread = spreadOf(sum, otherGains + gain, bands);
        if (spread.cost < best.spread.cost) {
          const setting = { delaySeconds, gainDb, inverted };
          best = { settings: from.settings.map((one, i) => (i === sub ? setting : one)), spread };
        }
      }
    }
  }
  return best;
}

function sumOf(
  { fields, bands }: SubProblem,
  settings: readonly SubSetting[],
  without: number | null,
): FieldSum {
  const [first] = fields;
  if (!first) throw new RangeError('subs must hold at least one, got none');
  const sum = silence(first);
  for (const [index, setting] of settings.entries()) {
    const field = fields[index];
    if (field && index !== without) addSub(sum, sum, field, setting, bands.hz);
  }
  return sum;
}
