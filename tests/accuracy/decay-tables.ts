import { decayRanges, type DecayCase } from './decay-measure';
import { quantileAtMost, shareAtLeast } from './scatter';
import { quantile, shown, type Row, type Table } from './table';

/** Octaves that are looked at together, by their midpoints. */
const octaves = [
  { name: '125 and 250 Hz', lowHz: 100, highHz: 300 },
  { name: '500 Hz and 1 kHz', lowHz: 400, highHz: 1200 },
  { name: '2 and 4 kHz', lowHz: 1800, highHz: 4200 },
] as const;

/**
 * Most error re the same response without noise, by the book: median and 90 %, shares. A decay that
 * bends is one number by the book, and what the octave filter lets in beside decides which.
 */
const most = { EDT: [0.1, 0.25], T20: [0.04, 0.1], T30: [0.04, 0.15] } as const;
/**
 * Least share of intervals that hold the mean of the other places, which is itself known to a third
 * of what one place scatters by, and of speakers that stand and aim otherwise.
 */
const leastCoverage = 0.75;
const leastTold = 0.9;

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

/** Decay times read through a sweep in noise, in rooms of one kind. */
export function decayTables(preset: string, rooms: readonly (readonly DecayCase[])[]): Table[] {
  const all = rooms.flat();
  return decayRanges.map((range) => ({
    title: `${range} at one seat, ${rooms.length} ${preset} rooms`,
    rows: octaves.flatMap(({ name, lowHz, highHz }) =>
      octaveRows(
        name,
        all.filter((one) => one.range === range && one.midHz > lowHz && one.midHz < highHz),
      ),
    ),
  }));
}

function octaveRows(name: string, all: readonly DecayCase[]): Row[] {
  const [{ range } = { range: 'T20' as const }] = all;
  const [half, tenth] = most[range];
  const told = all.filter(({ seconds }) => seconds !== null);
  const trusted = told.filter((one) => one.trusted);
  const errors = told.flatMap(({ seconds, seatSeconds }) =>
    seconds === null || seatSeconds === null ? [] : [Math.abs(seconds / seatSeconds - 1)],
  );
  const room = told.flatMap(({ seconds, roomSeconds }) =>
    seconds === null || roomSeconds === null ? [] : [Math.abs(seconds / roomSeconds - 1)],
  );
  const inside = trusted.filter(({ interval, roomSeconds }) => {
    return interval && roomSeconds && roomSeconds >= interval[0] && roomSeconds <= interval[1];
  });
  return [
    shareAtLeast(`${name}: told, of ${all.length}`, told.length, all.length, leastTold, percent),
    shown(`${name}: trusted, of those`, percent(trusted.length / told.length)),
    quantileAtMost(`${name}: error re the seat's own, median`, errors, 0.5, half, percent),
    quantileAtMost(`${name}: error re the seat's own, 90 %`, errors, 0.9, tenth, percent),
    shown(
      `${name}: off from six other places, median / 90 %`,
      `${percent(quantile(room, 0.5))} / ${percent(quantile(room, 0.9))}`,
    ),
    shareAtLeast(
      `${name}: their mean in the 90 % interval`,
      inside.length,
      trusted.length,
      leastCoverage,
      percent,
    ),
  ];
}
