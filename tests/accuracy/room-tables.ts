import { coverageRows } from './coverage-rows';
import type { ArrivalKind, RoomFigures } from './figures';
import { levelsAtDb, readAtDb } from './measure-room';
import { rolloffRows } from './take-rolloff-rows';
import { markTimeBound } from './bounds';
import { atLeast, atMost, bounded, quantile, shown, type Row, type Table } from './table';

const ppm = (value: number): string => `${value.toFixed(4)} ppm`;
const millimetres = (value: number): string => `${(value * 1000).toFixed(2)} mm`;
const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;
const decibels = (value: number): string => `${value.toFixed(2)} dB`;
const samples = (value: number): string => `${value.toFixed(4)} samples`;

/** Kinds of arrival, the prototype's median, 90 %, worst and gross, and limits. */
const arrivalKinds: readonly {
  readonly kind: ArrivalKind;
  readonly name: string;
  readonly prototypes: readonly [string, string, string, string];
  /** Largest median, metres; the 90 % error may be twice that. */
  readonly most: number;
  readonly gross: number;
  /** Least share that must be told. */
  readonly told: number;
}[] = [
  {
    kind: 'front',
    name: 'fronts',
    prototypes: ['0.7 mm', '1.6 mm', '4 mm', 'none'],
    most: 0.0015,
    gross: 0,
    told: 1,
  },
  {
    kind: 'surround',
    name: 'off-axis surrounds',
    prototypes: ['0.6 mm', '', '', 'none at 45 dB'],
    most: 0.002,
    gross: 0.005,
    told: 1,
  },
  {
    kind: 'height',
    name: 'heights aimed down',
    prototypes: ['', '', '', ''],
    most: 0.002,
    gross: 0.005,
    told: 1,
  },
  {
    kind: 'leak',
    name: 'bounced heights, leak',
    prototypes: ['', '', '', ''],
    most: 0.002,
    gross: 0.05,
    told: 1,
  },
  {
    kind: 'ceiling',
    name: 'bounced heights, ceiling path',
    prototypes: ['', '', '', '2 %'],
    most: 0.005,
    gross: 0.02,
    told: 0.3,
  },
];

/** Most error of the skew re the Cramér-Rao bound of its standard deviation. */
const skewMedian = 1;
const skewWorst = 5;

/** Farther off than this a place is wrong, seconds. */
const grossSeconds = 0.05;

/** Farther off than this is another sound than the direct one, metres. */
const grossMetres = 0.1;

/** The tables of all rooms of one kind. */
export function roomTables(preset: string, rooms: readonly RoomFigures[]): Table[] {
  const title = (what: string): string => `${what}, ${rooms.length} ${preset} rooms`;
  return [
    { title: title('Clock skew, error'), rows: skewRows(rooms) },
    { title: title('Lost and repeated buffers'), rows: bufferRows(rooms) },
    { title: title('Arrival relative to FL, error'), rows: arrivalRows(rooms) },
    { title: title('Polarity'), rows: polarityRows(rooms) },
    { title: title('In-room level 500 to 2000 Hz'), rows: levelRows(rooms) },
    { title: title('Roll-off in the take, one position'), rows: rolloffRows(rooms, preset) },
  ];
}

function skewRows(rooms: readonly RoomFigures[]): Row[] {
  const prototypes: Record<number, readonly [string, string]> = {
    30: ['0.0009 ppm', '0.006 ppm'],
    10: ['', '0.016 ppm'],
  };
  const ratios = [...new Set(rooms.flatMap(({ skew }) => skew.map(({ snrDb }) => snrDb)))];
  return ratios.flatMap((snrDb) => {
    const all = rooms.flatMap(({ skew }) => skew.filter((one) => one.snrDb === snrDb));
    const errors = all.flatMap(({ errorPpm }) => (errorPpm === null ? [] : [Math.abs(errorPpm)]));
    const [median, worst] = prototypes[snrDb] ?? ['', ''];
    const bound = quantile(
      all.map(({ boundPpm }) => boundPpm),
      0.5,
    );
    const at = `${snrDb} dB over noise`;
    const half = quantile(errors, 0.5);
    return [
      atLeast(`${at}: found, of ${all.length}`, errors.length / all.length, 1, '', percent),
      bounded(atMost(`${at}: median`, half, skewMedian * bound, median, ppm), ppm(bound)),
      atMost(`${at}: worst`, Math.max(...errors), skewWorst * bound, worst, ppm),
    ];
  });
}

function bufferRows(rooms: readonly RoomFigures[]): Row[] {
  const sum = (key: 'planted' | 'found' | 'falseAlarms' | 'wrongSegment'): number =>
    rooms.reduce((total, { buffers }) => total + buffers[key], 0);
  const sizes = rooms.flatMap(({ buffers }) => buffers.sizeErrors.map(Math.abs));
  return [
    atLeast(`found, of ${sum('planted')}`, sum('found') / sum('planted'), 1, '40 of 40', percent),
    atMost('size, worst', Math.max(...sizes), 0.02, '0.008 samples', samples),
    ...placeRows(rooms),
    atMost('named in the wrong segment', sum('wrongSegment'), 0, ''),
    atMost(`false alarms in ${2 * rooms.length} takes`, sum('falseAlarms'), 0, '0 of 8'),
  ];
}

/** Where the buffer was lost, as far as it was told; outside the sweep it hardly matters. */
function placeRows(rooms: readonly RoomFigures[]): Row[] {
  const all = rooms.flatMap(({ buffers }) => buffers.places);
  const inside = all.filter(({ inSweep }) => inSweep);
  const told = inside.flatMap(({ error }) => (error === null ? [] : [Math.abs(error)]));
  const wrong = told.filter((error) => error > grossSeconds).length;
  const outside = all.filter(({ inSweep }) => !inSweep);
  const named = outside.filter(({ error }) => error !== null).length;
  const fine = told.filter((error) => error <= grossSeconds);
  return [
    shown(`place told, of ${inside.length} in a sweep`, percent(told.length / inside.length)),
    shown('place told: median error', `${(1000 * quantile(fine, 0.5)).toFixed(2)} ms`),
    shown('place told: off by over 50 ms', `${wrong} of ${told.length}`),
    shown('place told of what lies outside a sweep', `${named} of ${outside.length}`),
  ];
}

function arrivalRows(rooms: readonly RoomFigures[]): Row[] {
  return arrivalKinds.flatMap(({ kind, name, prototypes, most, gross, told: leastTold }) => {
    const all = rooms.flatMap(({ arrivals }) => arrivals.filter((one) => one.kind === kind));
    if (all.length === 0) return [];
    const told = all.flatMap(({ error }) => (error === null ? [] : [Math.abs(error)]));
    const fine = told.filter((error) => error < grossMetres);
    const [half, tenth, worst, bad] = prototypes;
    const grossShare = (told.length - fine.length) / all.length;
    return [
      atLeast(`${name}: told, of ${all.length}`, told.length / all.length, leastTold, '', percent),
      bounded(
        atMost(`${name}: median`, quantile(fine, 0.5), most, half, millimetres),
        millimetres(Math.SQRT2 * 343 * markTimeBound(40)),
      ),
      atMost(`${name}: 90 %`, quantile(fine, 0.9), 2 * most, tenth, millimetres),
      shown(`${name}: worst that is not gross`, millimetres(Math.max(...fine)), worst),
      atMost(`${name}: gross (over 100 mm)`, grossShare, gross, bad, percent),
    ];
  });
}

function polarityRows(rooms: readonly RoomFigures[]): Row[] {
  const all = rooms.flatMap(({ polarity }) => polarity);
  const count = (what: string): number => all.filter((one) => one === what).length;
  const decided = all.length - count('open');
  return [
    atLeast(`decided, of ${all.length}`, decided / all.length, 0.95, '99.4 %', percent),
    atMost('wrong, of those', count('wrong'), 0, '0 of 320'),
  ];
}

function levelRows(rooms: readonly RoomFigures[]): Row[] {
  const all = rooms.flatMap(({ levels }) => levels);
  const inNoise = rooms.flatMap(({ levelsInNoise }) => levelsInNoise);
  const errors = all.flatMap((one) => (one ? [Math.abs(one.error)] : []));
  const gains = rooms.flatMap(({ roomGains }) => roomGains);
  const mean = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
  const spread = Math.sqrt(gains.reduce((sum, gain) => sum + (gain - mean) ** 2, 0) / gains.length);
  return [
    atLeast(`told, of ${all.length}`, errors.length / all.length, 1, '', percent),
    atMost('error relative to FL, worst', Math.max(...errors), 0.1, '', decibels),
    ...coverageRows(`${readAtDb} dB over noise`, all),
    ...coverageRows(`${levelsAtDb} dB over noise`, inNoise),
    shown('over the free field', `${mean.toFixed(1)} ± ${spread.toFixed(1)} dB`, '5.5 ± 2.2 dB'),
  ];
}
