import { msg, str } from '@lit/localize';
import type { ReadingCurves } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import type { FilterCurves, WorkbenchCurves } from '../../../src/workbench/workbench-curves';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import type { CurveBand } from '../../charts/workbench/workbench-trace';
import type { WorkbenchWishes } from './workbench-wishes';

/** Everything the workbench may draw of one speaker. */
export interface WorkbenchInput {
  readonly channel: ChannelLabel;
  /** CSS colour of its group. */
  readonly colour: string;
  /** With the settings in force; null where the bass of the speaker was not captured. */
  readonly curves: WorkbenchCurves | null;
  /** With the proposed settings; null where those are in force. */
  readonly proposed: WorkbenchCurves | null;
  readonly filters: FilterCurves | null;
  readonly reading: ReadingCurves | null;
}

/** The lines of the workbench, the sum on top. */
export function workbenchTraces(
  { channel, colour, curves, proposed, filters, reading }: WorkbenchInput,
  wishes: Pick<WorkbenchWishes, 'filters' | 'seats'>,
): CurveTrace[] {
  const line = (
    name: string,
    of: { readonly x: readonly number[]; readonly y: readonly number[] },
    look: Pick<CurveTrace, 'colour' | 'stroke' | 'weight'>,
  ): CurveTrace => ({ name, x: of.x, y: of.y, ...look });
  const fit = reading?.fit ?? null;
  // The fit keeps its own level; its flat part is set on the 0 dB of the other curves.
  const raise = curves ? -(fit?.db.at(-1) ?? 0) : 0;
  const fitted = fit
    ? [
        line(
          msg(str`${channel} fit`),
          { x: fit.hz, y: fit.db.map((db) => db + raise) },
          { colour, stroke: 'dashed' },
        ),
      ]
    : [];
  if (!curves) {
    if (!reading) return [];
    const { hz, db } = reading.response;
    return [
      line(msg(str`${channel} measured`), { x: hz, y: db }, { colour, stroke: 'solid' }),
      ...fitted,
    ];
  }
  const { hz: x, subs, sum, measured, seats } = curves;
  const ink = 'var(--ink)';
  const sub = 'var(--sub)';
  const mean = seats.length > 1 ? msg('Sum, mean of seats') : msg('Sum, predicted');
  return [
    ...(subs
      ? [line(mean, { x, y: sum }, { colour: ink, stroke: 'solid', weight: 'strong' })]
      : []),
    ...(proposed?.subs
      ? [line(msg('Sum as proposed'), { x, y: proposed.sum }, { colour: ink, stroke: 'dotted' })]
      : []),
    ...(subs && wishes.seats && seats.length > 1
      ? seats.map((seat) =>
          line(
            msg(str`at ${seat.name}`),
            { x, y: seat.sum },
            { colour: ink, stroke: 'solid', weight: 'thin' },
          ),
        )
      : []),
    line(msg(str`${channel} measured`), { x, y: measured }, { colour, stroke: 'solid' }),
    ...fitted,
    ...(subs ? [line(msg('Subs'), { x, y: subs }, { colour: sub, stroke: 'solid' })] : []),
    ...(filters && wishes.filters
      ? [
          line(
            msg('High-pass'),
            { x, y: filters.highPass },
            { colour, stroke: 'dotted', weight: 'thin' },
          ),
          line(
            msg('Low-pass'),
            { x, y: filters.lowPass },
            {
              colour: sub,
              stroke: 'dotted',
              weight: 'thin',
            },
          ),
        ]
      : []),
  ];
}

/** The 90 % band of the fit. */
export function workbenchBands({ curves, reading, colour }: WorkbenchInput): CurveBand[] {
  const fit = reading?.fit;
  if (!fit) return [];
  const raise = curves ? -(fit.db.at(-1) ?? 0) : 0;
  const raised = (line: readonly number[]) => line.map((db) => db + raise);
  return [{ colour, x: fit.hz, low: raised(fit.low), high: raised(fit.high) }];
}

const octaves = Math.SQRT2 ** 3;
const stepDb = 6;

/** Axes for what the tuner wants to see, never cutting off the highest curve under 18 dB. */
export function workbenchAxes(
  { curves, reading }: WorkbenchInput,
  { zoom, spanDb }: Pick<WorkbenchWishes, 'zoom' | 'spanDb'>,
  crossoverHz: number | null,
): CurveAxes {
  // Only of what no handle moves, so that the axis stands still while one is held.
  const shown = curves?.measured ?? reading?.response.db ?? [];
  const most = Math.max(2 * stepDb, ...shown.map((db) => Math.ceil((db + 2) / stepDb) * stepDb));
  const high = Math.min(3 * stepDb, most);
  const centre = crossoverHz ?? 80;
  const [low, top] =
    zoom === 'about the crossover'
      ? [Math.max(15, centre / octaves), Math.min(480, centre * octaves)]
      : zoom === 'low end'
        ? [15, 150]
        : [15, 480];
  return {
    x: { kind: 'frequency', low, high: top },
    y: { unit: 'dB', digits: 1, low: high - spanDb, high },
  };
}
