import type { RoomPreset } from '../../dsp/room/draw-room';
import {
  measureRolloffs,
  type RolloffCase,
  type RolloffCondition,
  type RolloffCrossing,
} from './rolloff-measure';
import { isQuantileWithin } from './scatter';
import { atLeast, atMost, bounded, quantile, shown, type Row, type Table } from './table';

/** Error of a frequency in %: median and 90 %. */
type Errors = readonly [median: number, most: number];

/** What a condition is held against, in %. */
interface Terms {
  readonly f3: Errors;
  readonly f6: Errors;
  readonly f10: Errors;
  /** Share of f6 above its 80 % quantile, and of wrong boxes among those told. */
  readonly under?: number;
  readonly wrongBox?: number;
  /** The prototype's errors of f3 and f10 and its coverage of f3. */
  readonly prototype?: { readonly f3: string; readonly f10?: string; readonly coverage?: string };
}

const terms: Record<RolloffCondition, Terms> = {
  'one position': {
    f3: [20, 50],
    f6: [16, 40],
    f10: [15, 38],
    prototype: { f3: '18 / 47 %', coverage: '95 %' },
  },
  'one position, sheet': {
    f3: [11, 25],
    f6: [11, 25],
    f10: [12, 27],
    prototype: { f3: '8 / 22 %' },
  },
  'one position, misaligned': { f3: [20, 50], f6: [16, 40], f10: [15, 38], wrongBox: 15 },
  'one position, noisy': { f3: [25, 50], f6: [21, 42], f10: [20, 42], under: 35 },
  'three seats': { f3: [18, 46], f6: [15, 36], f10: [14, 33] },
  'two of a model': { f3: [17, 44], f6: [14, 32], f10: [13, 30] },
  'five of a model': {
    f3: [14, 39],
    f6: [11, 26],
    f10: [9, 22],
    prototype: { f3: '13 / 39 %' },
  },
  'subs, one position': { f3: [20, 38], f6: [20, 34], f10: [18, 32], under: 50 },
  // Medians of 250 cases scatter by a twentieth of themselves: limits stand so far over the figures.
  close: {
    f3: [5.5, 20],
    f6: [4, 12],
    f10: [3.2, 10],
    wrongBox: 2,
    prototype: { f3: '4.4 / 20 %', f10: '2.7 / 10 %' },
  },
  'close, misaligned': { f3: [6, 18], f6: [4.5, 12], f10: [4, 10], wrongBox: 2 },
  // f3 of gently rolling vented boxes is ill-conditioned, and half of 'close' is sealed; f6 and f10 decide.
  'close, sealed': { f3: [6, 20], f6: [4, 12], f10: [4, 12], wrongBox: 2 },
  'close, cone and port': { f3: [5.5, 28], f6: [4, 12], f10: [4, 12], wrongBox: 2 },
  'close to the cone alone': { f3: [7, 25], f6: [5, 15], f10: [4, 12], wrongBox: 2 },
};
const leaky = { f3: '23 / 70 %', coverage: '92 %' };
/** Least truths inside a 90 % interval. */
const leastCoverage = 0.85;
/** Cramér-Rao of a magnitude fit in white noise 20 dB under every line, free field. */
const bound = '1.6 %';

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
    const held = terms[condition];
    const prototype = preset === 'leaky' && condition === 'one position' ? leaky : held.prototype;
    return {
      title: `Roll-off, ${condition}, ${own.length} cases in ${preset} rooms`,
      rows: conditionRows(own, { ...held, ...(prototype ? { prototype } : {}) }),
    };
  });
}

function conditionRows(
  cases: readonly RolloffCase[],
  { f3, f6, f10, under: mostUnder = 30, wrongBox = 10, prototype }: Terms,
): Row[] {
  const decided = cases.filter(({ box }) => box !== 'open');
  const wrong = decided.filter(({ box }) => box === 'wrong').length;
  const told = cases.filter((one) => one.f6 !== null);
  const under = told.filter((one) => (one.f6Upper80Hz ?? 0) < (one.f6?.truthHz ?? 0)).length;
  const wrongShare = decided.length === 0 ? 0 : wrong / decided.length;
  return [
    ...crossingRows('f3', pick(cases, 'f3'), f3, prototype?.f3, prototype?.coverage),
    ...crossingRows('f6', pick(cases, 'f6'), f6),
    ...crossingRows('f10', pick(cases, 'f10'), f10, prototype?.f10),
    atMost('f6 above its 80 % quantile', under / told.length, mostUnder / 100, '', percent),
    shown('refused', percent(1 - told.length / cases.length)),
    shown('box told', percent(decided.length / cases.length)),
    atMost('box wrong, of those', wrongShare, wrongBox / 100, '', percent),
  ];
}

function pick(cases: readonly RolloffCase[], key: 'f3' | 'f6' | 'f10'): RolloffCrossing[] {
  return cases.flatMap((one) => one[key] ?? []);
}

function crossingRows(
  name: string,
  all: readonly RolloffCrossing[],
  [mostMedian, most]: Errors,
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
  const [half, tenth] = [quantile(errors, 0.5), quantile(errors, 0.9)];
  const pair = `${(100 * half).toFixed(1)} / ${percent(tenth)}`;
  const share = inside / all.length;
  return [
    bounded(
      {
        what: `${name}: error, median / 90 %`,
        ours: pair,
        prototype,
        limit: `≤ ${mostMedian} / ${most} %`,
        within:
          isQuantileWithin(errors, 0.5, mostMedian / 100) &&
          isQuantileWithin(errors, 0.9, most / 100),
      },
      bound,
    ),
    shown(`${name}: bias; interval`, `${percent(Math.expm1(bias))}; × ${width.toFixed(2)}`),
    atLeast(`${name}: truth in 90 % interval`, share, leastCoverage, coverage, percent),
  ];
}
