import { curveAt, type Numbers } from './curve-path';
import { hzText, intervalText, isNumber, thinSpace } from './number-text';
import { placeLabels, type LabelRequest } from './place-labels';
import { narrowWidth, type ResponseInput, type ResponseLayout } from './response-layout';
import { textWidth } from './text-width';

export interface ChartLabel {
  readonly id: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly colour: string;
  readonly strong: boolean;
}

interface Wish {
  readonly id: string;
  readonly text: string;
  readonly colour: string;
  readonly strong?: boolean;
  readonly candidates: (width: number) => { x: number; y: number }[];
}

const lineHeight = 16;

/** Places along a curve, above and below it, from the given shares of the plot's width. */
function alongCurve(
  layout: ResponseLayout,
  hz: Numbers,
  db: Numbers,
  shares: readonly number[],
): (width: number) => { x: number; y: number }[] {
  return (width) =>
    shares.flatMap((share) => {
      const { plot, scales, hzAt } = layout;
      const left = plot.left + share * (plot.right - plot.left);
      const ys = [0, 0.25, 0.5, 0.75, 1].flatMap((part) => {
        const value = curveAt(hz, db, hzAt(Math.min(plot.right - 1, left + part * width)));
        return isNumber(value) ? [scales.y(value)] : [];
      });
      if (ys.length === 0) return [];
      const above = Math.min(...ys) - lineHeight / 2 - 4;
      const below = Math.max(...ys) + lineHeight / 2 + 4;
      return [above, below]
        .filter((y) => y > plot.top && y < plot.bottom)
        .map((y) => ({ x: left, y }));
    });
}

const spread = (first: number, ...rest: number[]): number[] => [
  first,
  ...rest,
  ...Array.from({ length: 16 }, (_, i) => 0.04 + i * 0.06),
];

function curveWishes(input: ResponseInput, layout: ResponseLayout): Wish[] {
  const [lead] = input.traces;
  const wishes: Wish[] = input.traces.map(({ channel, colour, curves }, order) => ({
    id: `curve ${channel}`,
    text: order === 0 ? `${channel} measured` : channel,
    colour,
    strong: order === 0,
    candidates: alongCurve(
      layout,
      curves.response.hz,
      curves.response.db,
      order === 0 ? spread(0.62, 0.7, 0.55, 0.78) : spread(0.82, 0.74, 0.9, 0.66),
    ),
  }));
  if (lead?.curves.fit && layout.fit) {
    const { hz, db } = lead.curves.fit;
    wishes.push({
      id: 'fit',
      text: `fit, 90${thinSpace}% band`,
      colour: lead.colour,
      candidates: alongCurve(layout, hz, db, spread(0.12, 0.08, 0.16, 0.2, 0.24)),
    });
  }
  if (lead && layout.noise) {
    const { hz, noiseDb } = lead.curves.response;
    wishes.push({
      id: 'noise',
      text: 'room noise',
      colour: 'var(--soft)',
      candidates: alongCurve(layout, hz, noiseDb, spread(0.6, 0.5, 0.7)),
    });
  }
  return wishes;
}

function markWishes(input: ResponseInput, layout: ResponseLayout): Wish[] {
  const { scales } = layout;
  return (input.traces[0]?.marks ?? []).map(({ downDb, hz, lowHz, highHz }) => {
    const level = `\u2212${String(downDb)}${thinSpace}dB`;
    const y = scales.y(-downDb);
    const left = scales.x(Math.min(lowHz, hz));
    const right = scales.x(Math.max(highHz, hz));
    return {
      id: `down ${String(downDb)}`,
      text:
        layout.width < narrowWidth
          ? level
          : `${level} at ${hzText(hz)}, ${intervalText([lowHz, highHz])}`,
      colour: input.traces[0]?.colour ?? 'var(--ink)',
      candidates: (width: number) => [
        { x: left - width - 8, y },
        { x: right + 8, y },
        { x: left - width - 8, y: y - lineHeight },
        { x: right + 8, y: y + lineHeight },
      ],
    };
  });
}

function crossoverWishes(input: ResponseInput, layout: ResponseLayout): Wish[] {
  const { crossoverHz, proposedHz } = input;
  const both = isNumber(crossoverHz) && isNumber(proposedHz) && proposedHz !== crossoverHz;
  const at = (id: string, hz: number, text: string, side: 'left' | 'right' | 'middle'): Wish => ({
    id,
    text,
    colour: 'var(--signal)',
    strong: id === 'crossover',
    candidates: (width) => {
      const x = layout.scales.x(hz);
      const lefts = { left: x - width + 2, middle: x - width / 2, right: x - 2 };
      return [lefts[side], lefts.middle, lefts.left, lefts.right].map((left) => ({
        x: left,
        y: layout.plot.top - 11,
      }));
    },
  });
  const crossoverSide = both ? (crossoverHz > proposedHz ? 'right' : 'left') : 'middle';
  const wishes: Wish[] = [];
  if (isNumber(crossoverHz)) {
    wishes.push(at('crossover', crossoverHz, `crossover ${hzText(crossoverHz)}`, crossoverSide));
  }
  if (both) {
    const side = crossoverSide === 'right' ? 'left' : 'right';
    wishes.push(at('proposed', proposedHz, `proposed ${hzText(proposedHz)}`, side));
  }
  return wishes;
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
  for (const { downDb, lowHz, highHz } of input.traces[0]?.marks ?? []) {
    for (let x = scales.x(lowHz); x <= scales.x(highHz); x += 3)
      points.push([x, scales.y(-downDb)]);
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
  const request = ({ id, text, strong, candidates }: Wish): LabelRequest => {
    const width = Math.ceil(textWidth(text, `${strong ? '700 ' : ''}12.5px ${face}`));
    return { id, width, height: lineHeight, candidates: candidates(width) };
  };
  const placed = [
    ...placeLabels(above.map(request), { ...layout.plot, left: 30, top: 0, right: layout.width }),
    ...placeLabels(inside.map(request), layout.plot, obstaclesOf(input, layout)),
  ];
  return [...above, ...inside].flatMap((wish, i) => {
    const place = placed[i];
    if (!place?.free) return [];
    const { id, text, colour, strong = false } = wish;
    return [{ id, text, colour, strong, x: place.x, y: place.y }];
  });
}
