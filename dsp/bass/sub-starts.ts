import { seededRandom } from '../signal/random';
import { bandEnvelope, envelopeOnset } from './band-envelope';
import type { SubSetting } from './seat-spread';
import {
  bestOfSub,
  judgeSettings,
  type SubGrid,
  type SubProblem,
  type SubSolution,
} from './sub-search';
import type { SeatTransfers } from './transfer';

const randomStarts = 4;
const onsetShare = 0.3;

/**
 * Where the descents of several subs begin: what is set now, one sub after another set best against
 * those before it, equal arrival at the first seat, and four seeded random settings of the grid.
 */
export function subStarts(
  problem: SubProblem,
  wired: SubSolution,
  grid: SubGrid,
  arrivals: readonly (number | null)[],
): SubSolution[] {
  const [first] = wired.settings;
  if (!first) throw new RangeError('subs must hold at least one, got none');
  const latest = Math.max(...grid.delaysSeconds);
  const earliest = Math.min(...grid.delaysSeconds);
  const arrived = arrivals.map((seconds, i): SubSetting => {
    const wait = (arrivals[0] ?? 0) - (seconds ?? arrivals[0] ?? 0);
    const delaySeconds = Math.min(latest, Math.max(earliest, first.delaySeconds + wait));
    return i === 0 ? first : { ...first, delaySeconds };
  });
  const random = seededRandom(arrivals.length);
  const pick = <T>(all: readonly T[], otherwise: T): T =>
    all[Math.floor(all.length * random())] ?? otherwise;
  const drawn = Array.from({ length: randomStarts }, () =>
    arrivals.map((_, i): SubSetting => ({
      delaySeconds: i === 0 ? first.delaySeconds : pick(grid.delaysSeconds, 0),
      gainDb: i === 0 ? first.gainDb : pick(grid.gainsDb, 0),
      inverted: i === 0 ? first.inverted : pick(grid.polarities, false),
    })),
  );
  return [
    wired,
    addedOneByOne(problem, first, grid),
    ...[arrived, ...drawn].map((settings) => judgeSettings(problem, settings)),
  ];
}

/** When each sub sets in at the first seat, from lowHz to highHz; null for silence. */
export function subArrivals(
  subs: readonly SeatTransfers[],
  hz: Float64Array,
  [lowHz, highHz]: readonly [number, number],
): (number | null)[] {
  return subs.map(([seat]) =>
    seat ? envelopeOnset(bandEnvelope(seat, { hz, lowHz, highHz }), onsetShare) : null,
  );
}

/** The first sub, then each next one set best against those before it. */
function addedOneByOne(problem: SubProblem, first: SubSetting, grid: SubGrid): SubSolution {
  let settings: readonly SubSetting[] = [first];
  for (let count = 2; count <= problem.fields.length; count++) {
    const part = { ...problem, fields: problem.fields.slice(0, count) };
    const start = judgeSettings(part, [...settings, first]);
    settings = bestOfSub(part, start, count - 1, () => grid).settings;
  }
  return judgeSettings(problem, settings);
}
