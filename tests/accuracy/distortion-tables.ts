import type { DistortionFigures } from './distortion-measure';
import { quantileAtMost, shareAtLeast } from './scatter';
import { shown, type Row, type Table } from './table';

/** Fundamentals that are looked at together. */
const ranges = [
  { name: '40 to 200 Hz', lowHz: 40, highHz: 200 },
  { name: '200 Hz to 3 kHz', lowHz: 200, highHz: 3000 },
] as const;

/**
 * Most error of a told harmonic, median and 90 %, dB, and least share told, by range: in live rooms
 * one harmonic decays over the next, and a third of them cannot be told.
 */
const most = [
  { half: 1, tenth: 3, told: [0.5, 0.4, 0.4, 0.7] },
  { half: 0.2, tenth: 1, told: [0.75, 0.65, 0.65, 0.9] },
] as const;

/**
 * A thousandth. Below 25 Hz the linear response rings ahead of itself by some −75 dB, where the
 * sweep starts, into the second harmonic's window.
 */
const mostOfNoneDb = -60;

const decibels = (value: number): string => `${value.toFixed(2)} dB`;
const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

/** Harmonics of speakers that distort by a known polynomial, in rooms of one kind. */
export function distortionTables(preset: string, rooms: readonly DistortionFigures[]): Table[] {
  const told = rooms.flatMap((room) => room.told);
  const rows = [2, 3, 4, 5].flatMap((order) =>
    ranges.flatMap(({ name, lowHz, highHz }, at): Row[] => {
      const all = told.filter((one) => {
        return one.order === order && one.hz >= lowHz && one.hz < highHz;
      });
      const errors = all.flatMap(({ errorDb }) => (errorDb === null ? [] : [Math.abs(errorDb)]));
      const limits = most[at] ?? most[0];
      const what = `harmonic ${order} of ${name}`;
      const least = limits.told[order - 2] ?? 0;
      return [
        shareAtLeast(`${what}: told, of ${all.length}`, errors.length, all.length, least, percent),
        quantileAtMost(`${what}: error, median`, errors, 0.5, limits.half, decibels),
        quantileAtMost(`${what}: error, 90 %`, errors, 0.9, limits.tenth, decibels),
      ];
    }),
  );
  const none = rooms.flatMap(({ ofNoneDb }) => ofNoneDb);
  const highest = Math.max(-Infinity, ...none);
  return [
    {
      title: `Distortion, known polynomial, ${rooms.length} ${preset} rooms`,
      rows: [
        ...rows,
        {
          ...shown(`highest of ${none.length} told of speakers that have none`, decibels(highest)),
          limit: `≤ ${decibels(mostOfNoneDb)}`,
          within: highest <= mostOfNoneDb,
        },
      ],
    },
  ];
}
