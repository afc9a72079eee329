import { curveAt } from '../curve-path';
import { hzText, millisecondsText, numberText } from '../../../src/locale/number-text';
import type { NumbersBehind } from '../number-table';
import type { CurveAxes, CurveTrace } from './curve-trace';

/** Where the cursor stands, in words. */
export function placeText({ x }: CurveAxes, at: number): string {
  return x.kind === 'frequency' ? hzText(at) : millisecondsText(at, 2);
}

/** Value of every trace at a place, with its unit. */
export function valuesAt(
  traces: readonly CurveTrace[],
  axes: CurveAxes,
  at: number,
): { readonly name: string; readonly text: string }[] {
  return traces.map(({ name, x, y }) => ({
    name,
    text: withUnit(numberText(valueAt(x, y, axes, at), axes.y.digits), axes.y.unit),
  }));
}

/** What the cursor reads there, as one sentence for who cannot see it. */
export function cursorSentence(traces: readonly CurveTrace[], axes: CurveAxes, at: number): string {
  const said = valuesAt(traces, axes, at).map(({ name, text }) => `${name} ${text}`);
  return `${placeText(axes, at)}: ${said.join(', ')}`;
}

/** The numbers behind a chart, and what they were read from. */
export interface CurveNumbers extends NumbersBehind {
  readonly traces: readonly CurveTrace[];
  readonly axes: CurveAxes;
}

/** The numbers kept as long as traces and axes are the same: a moving cursor changes neither. */
export function keepNumbers(
  kept: CurveNumbers | null,
  traces: readonly CurveTrace[],
  axes: CurveAxes,
): CurveNumbers {
  if (kept?.traces === traces && kept.axes === axes) return kept;
  return {
    traces,
    axes,
    table: () => curveTable(traces, axes),
    copy: () => curveCopy(traces, axes),
  };
}

/** Heads and at most about a hundred rows of the table behind the chart. */
export function curveTable(
  traces: readonly CurveTrace[],
  axes: CurveAxes,
): { readonly head: string[]; readonly rows: string[][] } {
  const places = traces[0]?.x ?? [];
  const stride = Math.max(1, Math.ceil(places.length / 100));
  const unit = axes.y.unit === '' ? '' : `, ${axes.y.unit}`;
  const first = axes.x.kind === 'frequency' ? 'Hz' : 'ms';
  return {
    head: [first, ...traces.map(({ name }) => `${name}${unit}`)],
    rows: places
      .filter((_, n) => n % stride === 0)
      .map((at) => [
        numberText(axes.x.kind === 'frequency' ? at : at * 1000, at < 100 ? 1 : 0),
        ...traces.map(({ x, y }) => numberText(valueAt(x, y, axes, at), axes.y.digits)),
      ]),
  };
}

/** All points of the first trace's places as tab-separated text with plain signs. */
export function curveCopy(traces: readonly CurveTrace[], axes: CurveAxes): string {
  const unit = axes.y.unit === '' ? '' : ` ${axes.y.unit}`;
  const head = [axes.x.kind === 'frequency' ? 'Hz' : 's', ...traces.map(({ name }) => name + unit)];
  const cell = (value: number | null): string =>
    value === null ? '' : String(Number(value.toPrecision(6)));
  // Most lines share their places: only the others are searched.
  const lines = (traces[0]?.x ?? []).map((at, n) =>
    [at, ...traces.map(({ x, y }) => (x[n] === at ? (y[n] ?? null) : valueAt(x, y, axes, at)))]
      .map(cell)
      .join('\t'),
  );
  return `${head.join('\t')}\n${lines.join('\n')}\n`;
}

function withUnit(text: string, unit: string): string {
  return text === '–' || unit === '' ? text : `${text}\u202f${unit}`;
}

function valueAt(
  x: readonly number[],
  y: readonly (number | null)[],
  axes: CurveAxes,
  at: number,
): number | null {
  if (axes.x.kind === 'frequency') return curveAt(x, y, at);
  const [first = 0] = x;
  const shift = 1 - Math.min(0, first);
  return curveAt(
    x.map((value) => value + shift),
    y,
    at + shift,
  );
}
