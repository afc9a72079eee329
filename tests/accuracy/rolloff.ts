import type { RoomPreset } from '../../dsp/room/draw-room';
import {
  measureRolloffs,
  type RolloffCase,
  type RolloffCondition,
  type RolloffCrossing,
} from './rolloff-measure';
import { atLeast, atMost, quantile, shown, type Row, type Table } from './table';

interface Prototype {
  readonly f3: string;
  readonly f10?: string;
  readonly coverage?: string;
}

/** Prototype: median / 90 % error. */
const prototypes: Partial<Record<RolloffCondition, Prototype>> = {
  'one position': { f3: '18 / 47 %', coverage: '95 %' },
  'one position, sheet': { f3: '8 / 22 %' },
  'five of a model': { f3: '13 / 39 %' },
  close: { f3: '4.4 / 20 %', f10: '2.7 / 10 %' },
};
const leaky: Prototype = { f3: '23 / 70 %', coverage: '92 %' };

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

/** Cases of all conditions in `rooms` rooms of a kind; the same seed gives the same cases. */
export function measureRolloffRooms(
  preset: RoomPreset,
  rooms: number,
  seed: number,
  onRoom: (done: number) => void = () => undefined,
): RolloffCase[] {
  return Array.from({ length: rooms }, (_, i) => {
    const cases = measureRolloffs(preset, seed + i);
    onRoom(i + 1);
    return cases;
  }).flat();
}

/** One table per condition: errors, bias, coverage, box type. */
export function rolloffTables(preset: RoomPreset, cases: readonly RolloffCase[]): Table[] {
  const conditions = [...new Set(cases.map(({ condition }) => condition))];
  return conditions.map((condition) => {
    const own = cases.filter((one) => one.condition === condition);
    const prototype =
      preset === 'leaky' && condition === 'one position' ? leaky : prototypes[condition];
    return {
      title: `Roll-off, ${condition}, ${own.length} cases in ${preset} rooms`,
      rows: conditionRows(condition, own, prototype),
    };
  });
}

function conditionRows(
  condition: RolloffCondition,
  cases: readonly RolloffCase[],
  prototype: Prototype | undefined,
): Row[] {
  const least = condition.startsWith('close') ? 0.9 : 0.85;
  const decided = cases.filter(({ box }) => box !== 'open');
  const wrong = decided.filter(({ box }) => box === 'wrong').length;
  const told = cases.filter(({ f6 }) => f6 !== null);
  const under = told.filter(({ f6, f6Upper80Hz }) => (f6Upper80Hz ?? 0) < (f6?.truthHz ?? 0));
  return [
    ...crossingRows('f3', pick(cases, 'f3'), 0.8, prototype?.f3, prototype?.coverage),
    ...crossingRows('f6', pick(cases, 'f6'), least, undefined, undefined),
    ...crossingRows('f10', pick(cases, 'f10'), least, prototype?.f10, undefined),
    atMost('80 % quantile of f6 below the true f6', under.length / told.length, 0.3, '', percent),
    shown('refused', percent(1 - told.length / cases.length)),
    shown('box told', percent(decided.length / cases.length)),
    shown('box wrong, of those', decided.length === 0 ? '' : percent(wrong / decided.length)),
  ];
}

function pick(cases: readonly RolloffCase[], key: 'f3' | 'f6' | 'f10'): RolloffCrossing[] {
  return cases.flatMap((one) => one[key] ?? []);
}

function crossingRows(
  name: string,
  all: readonly RolloffCrossing[],
  leastCoverage: number,
  prototype = '',
  coverage = '',
): Row[] {
  const errors = all.map(({ median, truthHz }) => Math.abs(median / truthHz - 1));
  const bias = quantile(
    all.map(({ median, truthHz }) => Math.log(median / truthHz)),
    0.5,
  );
  const inside = all.filter(({ truthHz, low, high }) => truthHz >= low && truthHz <= high).length;
  const width = quantile(
    all.map(({ low, high }) => high / low),
    0.5,
  );
  const pair = `${(100 * quantile(errors, 0.5)).toFixed(1)} / ${percent(quantile(errors, 0.9))}`;
  const share = inside / all.length;
  return [
    shown(`${name}: error, median / 90 %`, pair, prototype),
    shown(`${name}: bias; interval`, `${percent(Math.expm1(bias))}; × ${width.toFixed(2)}`),
    atLeast(`${name}: truth in 90 % interval`, share, leastCoverage, coverage, percent),
  ];
}
