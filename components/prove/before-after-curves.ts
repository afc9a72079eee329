import { msg } from '@lit/localize';
import type { ChannelReading, Readings } from '../../src/reading/reading';
import type { ProofState } from '../../src/session/derive-proof';
import type { ChannelLabel } from '../../src/system/channel';
import type { CurveAxes, CurveTrace } from '../charts/curve/curve-trace';
import { isNumber } from '../../src/locale/number-text';

/** One speaker before its settings and through the processor; a side without curves is left out. */
export function beforeAfterTraces(
  { before, readings }: Pick<ProofState, 'before' | 'readings'>,
  label: ChannelLabel,
  colour: string,
): CurveTrace[] {
  const [was, is] = [find(before, label), find(readings, label)];
  return [
    ...traceOf(is, msg('through the processor'), colour, 'solid'),
    ...traceOf(was, msg('before'), 'var(--soft)', 'dashed'),
  ];
}

/** Whole steps of 5 dB that hold the curves, at least 30 and at most 60. */
export function beforeAfterAxes(traces: readonly CurveTrace[]): CurveAxes {
  const told = traces.flatMap(({ y }) => y.filter(isNumber));
  const top = told.length === 0 ? 0 : Math.ceil((Math.max(...told) + 2) / 5) * 5;
  const span = Math.min(60, Math.max(30, top - Math.min(top, ...told)));
  return {
    x: { kind: 'frequency', low: 15, high: 20_000 },
    y: { unit: 'dB', digits: 1, low: top - Math.ceil(span / 5) * 5, high: top },
  };
}

function find(readings: Readings | null, label: ChannelLabel): ChannelReading | null {
  return readings?.channels.find(({ channel }) => channel === label) ?? null;
}

function traceOf(
  reading: ChannelReading | null,
  name: string,
  colour: string,
  stroke: CurveTrace['stroke'],
): CurveTrace[] {
  const response = reading?.curves?.response;
  return response ? [{ name, colour, stroke, x: response.hz, y: response.db }] : [];
}
