import { msg, str } from '@lit/localize';
import { averageByPower, averageGroup } from '../../../dsp/response/average-curves';
import {
  differenceCurve,
  levelCurve,
  type DbCurve,
  type PowerCurve,
} from '../../../dsp/response/curve';
import { logMean } from '../../../dsp/response/log-mean';
import {
  deviationFromTarget,
  offsetFromTarget,
  targetCurve,
  type Target,
} from '../../../dsp/response/target';
import type { ResponsesAnswer } from '../../../src/inspect/inspection';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import type { ShownSource } from './inspect-sources';
import type { InspectWishes } from './inspect-wishes';

/** Band in which curves are levelled: where the level of mains is read, and that of subs. */
const middleHz = { main: [500, 2000], sub: [40, 80] } as const;

interface Shown {
  readonly source: ShownSource;
  readonly curve: PowerCurve;
}

/** The lines of the response view: each curve, their average or their differences, and the target. */
export function responseTraces(
  answer: ResponsesAnswer,
  sources: readonly ShownSource[],
  wishes: InspectWishes,
): CurveTrace[] {
  const { hz } = answer;
  const shown = sources.flatMap((source): Shown[] => {
    const found = answer.curves.find(
      (one) => one.source.takeId === source.takeId && one.source.channel === source.channel,
    );
    return found ? [{ source, curve: { hz, ...found } }] : [];
  });
  const [first] = shown;
  if (!first) return [];
  const lines = combine(shown, wishes);
  if (wishes.target === null || wishes.combine === 'difference') return lines;
  return againstTarget(lines, first.source, wishes.target, wishes.overTarget);
}

function combine(shown: readonly Shown[], wishes: InspectWishes): CurveTrace[] {
  const each = shown.map(({ source, curve }) => lineOf(source, levelOf(source, curve, wishes)));
  const [first, ...others] = each;
  if (!first || others.length === 0 || wishes.combine === 'each') return each;
  if (wishes.combine === 'difference') {
    const least = { hz: first.x, db: first.y };
    return others.map((other) => ({
      ...other,
      name: msg(str`${other.name} less ${first.name}`),
      y: differenceCurve({ hz: other.x, db: other.y }, least).db,
    }));
  }
  const faint = each.map((one) => ({ ...one, stroke: 'dotted' as const }));
  const average: CurveTrace = {
    name: msg(str`average of ${each.length}`),
    colour: 'var(--ink)',
    stroke: 'solid',
    x: first.x,
    y: averageOf(shown, wishes).db,
  };
  return [average, ...faint];
}

function averageOf(shown: readonly Shown[], { levelled }: InspectWishes): DbCurve {
  const curves = shown.map(({ curve }) => curve);
  const bands = new Set(shown.map(({ source }) => middleOf(source)));
  const [band] = bands;
  const told = band && bands.size === 1 && curves.every((one) => isTold(one, band));
  if (!levelled || !told) return averageByPower(curves);
  const { hz, db } = averageGroup(curves, band);
  return { hz, db };
}

function isTold(curve: PowerCurve, [low, high]: readonly [number, number]): boolean {
  const own = Array.from(curve.power, (value, k) => value - (curve.noisePower?.[k] ?? 0));
  return (logMean(curve.hz, own, low, high) ?? 0) > 0;
}

function levelOf(source: ShownSource, curve: PowerCurve, { levelled }: InspectWishes): DbCurve {
  const band = middleOf(source);
  // The average of one, levelled, is the curve at 0 dB in its own middle.
  return levelled && isTold(curve, band) ? averageGroup([curve], band) : levelCurve(curve);
}

function middleOf({ group }: ShownSource): readonly [number, number] {
  return group === 'subs' ? middleHz.sub : middleHz.main;
}

function lineOf({ name, colour, stroke }: ShownSource, { hz, db }: DbCurve): CurveTrace {
  return { name, colour, stroke, x: Array.from(hz), y: db };
}

/** The target at the height of the first line, or what every line has over it. */
function againstTarget(
  lines: readonly CurveTrace[],
  source: ShownSource,
  target: Target,
  over: boolean,
): CurveTrace[] {
  const offset = ({ x, y }: CurveTrace): number =>
    offsetFromTarget({ hz: x, db: y }, target, middleOf(source)) ?? 0;
  if (over) {
    return lines.map((line) => ({
      ...line,
      y: deviationFromTarget({ hz: line.x, db: line.y }, target, offset(line)).db,
    }));
  }
  const [first] = lines;
  if (!first) return [];
  const lift = offset(first);
  const shape = targetCurve(target, first.x).db.map((db) => (db === null ? null : db + lift));
  const line: CurveTrace = {
    name: 'target',
    colour: 'var(--signal)',
    stroke: 'dashed',
    x: first.x,
    y: shape,
  };
  return [...lines, line];
}

/** Axes that hold the curves: whole steps of 5 dB, at least 20 or 30 and at most 60. */
export function responseAxes(
  traces: readonly CurveTrace[],
  { combine, overTarget, target }: InspectWishes,
  range: 'low' | 'full',
): CurveAxes {
  const [low, high] = range === 'low' ? [15, 500] : [15, 20_000];
  const told = traces.flatMap(({ x, y }) =>
    y.filter((db, i): db is number => {
      const hz = x[i] ?? 0;
      return db !== null && hz >= low && hz <= high;
    }),
  );
  const flat = combine === 'difference' || (overTarget && target !== null);
  const [most, least] = [Math.max(-200, ...told), Math.min(200, ...told)];
  const top = told.length === 0 ? 0 : Math.ceil((most + 2) / 5) * 5;
  const span = Math.min(60, Math.max(flat ? 20 : 30, top - least));
  return {
    x: { kind: 'frequency', low, high },
    y: { unit: 'dB', digits: 1, low: top - Math.ceil(span / 5) * 5, high: top },
  };
}
