import type { LevelFigure } from './figures';
import { shareAtLeast } from './scatter';
import { quantile, shown, type Row } from './table';

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

/** Whether the 90 % intervals hold the truth, no less and hardly more often than they say. */
export function coverageRows(at: string, all: readonly (LevelFigure | null)[]): Row[] {
  const told = all.flatMap((one) => one ?? []);
  const held = told.filter(({ low, high }) => low <= 0 && high >= 0).length;
  const halves = told.map(({ low, high }) => (high - low) / 2);
  const of = `the 90 % interval, of ${told.length}`;
  return [
    shown(`${at}: half of the 90 % interval, median`, `${quantile(halves, 0.5).toFixed(4)} dB`),
    shareAtLeast(`${at}: truth inside ${of}`, held, told.length, 0.85, percent),
    shareAtLeast(`${at}: truth outside ${of}`, told.length - held, told.length, 0.05, percent),
  ];
}
