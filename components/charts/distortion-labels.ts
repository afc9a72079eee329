import { curveAt } from './curve-path';
import { hiddenWords, namedCurves } from './distortion-curves';
import type { DistortionInput, DistortionLayout } from './distortion-layout';
import { isNumber } from '../../src/locale/number-text';
import { placeLabels, type LabelRequest } from './place-labels';
import type { ChartLabel } from './response-labels';
import { lineHeight } from './response-wishes';
import { textWidth } from './text-width';

/** A stretch narrower than this, pixels, is not named: its neighbours are. */
const leastStretch = 40;

interface Wish extends LabelRequest {
  readonly text: string;
  readonly strong: boolean;
  readonly soft: boolean;
}

/** Direct labels of lines and hidden stretches, none on another; `face` is the CSS font family. */
export function labelDistortion(
  input: DistortionInput,
  layout: DistortionLayout,
  face: string,
  colour: string,
): ChartLabel[] {
  const wishes = [...hiddenWishes(input, layout, face), ...lineWishes(input, layout, face)];
  const placed = placeLabels(wishes, layout.plot, obstaclesOf(input, layout));
  return wishes.flatMap(({ id, text, strong, soft }, i) => {
    const place = placed[i];
    if (!place?.free) return [];
    return [
      {
        id,
        text,
        strong,
        colour: soft ? 'var(--soft)' : strong ? colour : 'var(--ink)',
        x: place.x,
        y: place.y,
      },
    ];
  });
}

function lineWishes(
  { curves }: DistortionInput,
  { plot, scales }: DistortionLayout,
  face: string,
): Wish[] {
  return namedCurves(curves).flatMap(({ id, name, curve }) => {
    const points = curves.hz.flatMap((hz, i) => {
      const db = curve.db[i];
      const [x, y] = [scales.x(hz), isNumber(db) ? scales.y(db) : NaN];
      const inside = x >= plot.left && x <= plot.right && y > plot.top && y < plot.bottom;
      return inside ? [{ x, y }] : [];
    });
    if (points.length < 2) return [];
    const strong = id === 'total';
    const width = widthOf(name, strong, face);
    const candidates = points.toReversed().flatMap(({ x, y }) => [
      { x: x - width / 2, y: y - lineHeight / 2 - 3 },
      { x: x - width / 2, y: y + lineHeight / 2 + 3 },
      { x: x + 6, y },
    ]);
    return [{ id, text: name, strong, soft: false, width, height: lineHeight, candidates }];
  });
}

function hiddenWishes(
  { curves }: DistortionInput,
  { plot, scales, hidden }: DistortionLayout,
  face: string,
): Wish[] {
  const widest = new Map<string, { readonly left: number; readonly right: number }>();
  for (const { by, from, to } of hidden) {
    const left = Math.max(plot.left, scales.x(curves.hz[from] ?? 1));
    const right = Math.min(plot.right, scales.x(curves.hz[to] ?? 1));
    const known = widest.get(by);
    if (right - left > (known ? known.right - known.left : leastStretch))
      widest.set(by, { left, right });
  }
  return hidden.flatMap(({ by }, i) => {
    const span = widest.get(by);
    if (!span || hidden.findIndex((one) => one.by === by) !== i) return [];
    const text = hiddenWords[by];
    const width = widthOf(text, false, face);
    const x = (span.left + span.right - width) / 2;
    const candidates = [14, 32, 50].map((up) => ({ x, y: plot.bottom - up }));
    return [{ id: by, text, strong: false, soft: true, width, height: lineHeight, candidates }];
  });
}

function widthOf(text: string, strong: boolean, face: string): number {
  return Math.ceil(textWidth(text, `${strong ? '700 ' : ''}12.5px ${face}`));
}

/** Points of all lines, every few pixels, that labels should not sit on. */
function obstaclesOf(
  { curves }: DistortionInput,
  { plot, scales, hzAt }: DistortionLayout,
): [number, number][] {
  const points: [number, number][] = [];
  for (const { curve } of namedCurves(curves)) {
    for (let x = plot.left; x <= plot.right; x += 4) {
      const db = curveAt(curves.hz, curve.db, hzAt(x));
      if (isNumber(db)) points.push([x, scales.y(db)]);
    }
  }
  return points;
}
