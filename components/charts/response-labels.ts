import { curveAt, type Numbers } from './curve-path';
import { isNumber } from '../../src/locale/number-text';
import { placeLabels, type LabelRequest } from './place-labels';
import type { ResponseInput, ResponseLayout } from './response-layout';
import {
  crossoverWishes,
  curveWishes,
  lineHeight,
  markWishes,
  type LabelWish,
} from './response-wishes';
import { textWidth } from './text-width';

export interface ChartLabel {
  readonly id: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly colour: string;
  readonly strong: boolean;
}

/** Points of all drawn lines, every few pixels, that labels should not sit on. */
function obstaclesOf(input: ResponseInput, layout: ResponseLayout): [number, number][] {
  const { plot, scales, hzAt } = layout;
  const curves: [Numbers, Numbers][] = input.traces.map(({ curves: { response } }) => [
    response.hz,
    response.db,
  ]);
  const lead = input.traces[0]?.curves;
  if (lead) curves.push([lead.response.hz, lead.response.noiseDb]);
  if (lead?.fit) curves.push([lead.fit.hz, lead.fit.db]);
  const points: [number, number][] = [];
  for (let x = plot.left; x <= plot.right; x += 3) {
    for (const [hz, db] of curves) {
      const value = curveAt(hz, db, hzAt(x));
      if (isNumber(value)) points.push([x, scales.y(value)]);
    }
  }
  for (const hz of [input.crossoverHz, input.proposedHz]) {
    if (!isNumber(hz)) continue;
    for (let y = plot.top; y <= plot.bottom; y += 3) points.push([scales.x(hz), y]);
  }
  for (const { levelDb, lowHz, highHz } of input.traces[0]?.marks ?? []) {
    for (let x = scales.x(lowHz); x <= scales.x(highHz); x += 3)
      points.push([x, scales.y(levelDb)]);
  }
  return points;
}

/** Direct labels of curves, marks and crossover, none on another; `face` is the CSS font family. */
export function labelResponse(
  input: ResponseInput,
  layout: ResponseLayout,
  face: string,
): ChartLabel[] {
  const above = crossoverWishes(input, layout);
  const inside = [...markWishes(input, layout), ...curveWishes(input, layout)];
  const request = ({ id, text, strong, candidates }: LabelWish): LabelRequest => {
    const width = Math.ceil(textWidth(text, `${strong ? '700 ' : ''}12.5px ${face}`));
    return { id, width, height: lineHeight, candidates: candidates(width) };
  };
  const aboveRequests = above.map(request);
  const placedAbove = placeLabels(aboveRequests, {
    ...layout.plot,
    left: 30,
    top: 0,
    right: layout.width,
  });
  const taken = placedAbove.map(({ x, y }, i) => ({
    left: x,
    right: x + (aboveRequests[i]?.width ?? 0),
    top: y - lineHeight / 2,
    bottom: y + lineHeight / 2,
  }));
  const placed = [
    ...placedAbove,
    ...placeLabels(inside.map(request), layout.plot, obstaclesOf(input, layout), taken),
  ];
  return [...above, ...inside].flatMap((wish, i) => {
    const place = placed[i];
    if (!place?.free) return [];
    const { id, text, colour, strong = false } = wish;
    return [{ id, text, colour, strong, x: place.x, y: place.y }];
  });
}
