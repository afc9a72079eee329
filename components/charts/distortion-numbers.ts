import { msg, str } from '@lit/localize';
import {
  namedCurves,
  type DistortionCurves,
  type DistortionUnit,
  type NamedCurve,
} from './distortion-curves';
import { dbText, hzText, isNumber, numberText, thinSpace } from '../../src/locale/number-text';

const why = {
  get noise() {
    return msg('noise');
  },
  get decay() {
    return msg('the room');
  },
  get band() {
    return msg('beyond the sweep');
  },
} as const;

/** A level re the fundamental, dB, in a unit, without its sign of unit. */
export function levelText(db: number | null | undefined, unit: DistortionUnit): string {
  if (!isNumber(db)) return '–';
  if (unit === 'db') return numberText(db, 1);
  const percent = 100 * 10 ** (db / 20);
  if (percent < 0.005) return numberText(0, 2);
  return numberText(percent, percent >= 10 ? 0 : percent >= 1 ? 1 : 2);
}

function withUnit(db: number, unit: DistortionUnit): string {
  return unit === 'db' ? dbText(db) : `${levelText(db, unit)}${thinSpace}%`;
}

/** What the cursor reads at one frequency of the curves. */
export function readDistortionAt(
  curves: DistortionCurves,
  hz: number,
  unit: DistortionUnit,
): readonly { readonly name: string; readonly text: string }[] {
  const i = curves.hz.indexOf(hz);
  if (i < 0) return [];
  return namedCurves(curves).map(({ name, curve }) => ({ name, text: textAt(curve, i, unit) }));
}

function textAt(
  { db, floorDb, limitedBy }: NamedCurve['curve'],
  i: number,
  unit: DistortionUnit,
): string {
  const level = db[i];
  if (isNumber(level)) return withUnit(level, unit);
  const reason = why[limitedBy[i] ?? 'noise'];
  const floor = floorDb[i];
  return isNumber(floor) ? msg(str`under ${withUnit(floor, unit)} (${reason})`) : `– (${reason})`;
}

/** The read-out as one sentence, for a screen reader. */
export function distortionSentence(
  curves: DistortionCurves,
  hz: number,
  unit: DistortionUnit,
): string {
  const values = readDistortionAt(curves, hz, unit);
  return `${hzText(hz)}: ${values.map(({ name, text }) => `${name} ${text}`).join(', ')}`;
}

const pointsPerRow = 2;

/** Column heads and third-octave rows of the table behind the chart; "<" where it is hidden. */
export function distortionTable(
  curves: DistortionCurves,
  unit: DistortionUnit,
): { head: string[]; rows: string[][] } {
  const named = namedCurves(curves);
  const sign = unit === 'db' ? 'dB' : '%';
  const cell = ({ db, floorDb }: NamedCurve['curve'], i: number): string => {
    if (isNumber(db[i])) return levelText(db[i], unit);
    return isNumber(floorDb[i]) ? `< ${levelText(floorDb[i], unit)}` : '–';
  };
  return {
    head: ['Hz', ...named.map(({ name }) => `${name}, ${sign}`)],
    rows: curves.hz.flatMap((hz, i) =>
      i % pointsPerRow === 0
        ? [[numberText(hz, hz < 100 ? 1 : 0), ...named.map(({ curve }) => cell(curve, i))]]
        : [],
    ),
  };
}

/** All points as tab-separated dB with plain signs: what is told, and what the rest stays under. */
export function distortionCopy(curves: DistortionCurves): string {
  const named = namedCurves(curves);
  const cell = (value: number | null | undefined): string =>
    isNumber(value) ? String(Number(value.toFixed(2))) : '';
  const head = ['Hz', ...named.flatMap(({ name }) => [`${name} dB`, msg(str`${name} floor dB`)])];
  const lines = curves.hz.map((hz, i) =>
    [cell(hz), ...named.flatMap(({ curve }) => [cell(curve.db[i]), cell(curve.floorDb[i])])].join(
      '\t',
    ),
  );
  return `${head.join('\t')}\n${lines.join('\n')}\n`;
}
