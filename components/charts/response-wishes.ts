import { msg, str } from '@lit/localize';
import { curveAt, type Numbers } from './curve-path';
import { hzText, intervalText, isNumber, thinSpace } from '../../src/locale/number-text';
import { narrowWidth, type ResponseInput, type ResponseLayout } from './response-layout';

/** A label of the chart with the places it would like, once its width is known. */
export interface LabelWish {
  readonly id: string;
  readonly text: string;
  readonly colour: string;
  readonly strong?: boolean;
  readonly candidates: (width: number) => { x: number; y: number }[];
}

/** Height of one line of text, pixels. */
export const lineHeight = 16;

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
      if (ys.length === 0 || ys.some((y) => y > plot.bottom || y < plot.top)) return [];
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

/** Labels along the curves: measured, partners, fit, noise. */
export function curveWishes(input: ResponseInput, layout: ResponseLayout): LabelWish[] {
  const [lead] = input.traces;
  const wishes: LabelWish[] = input.traces.map(({ channel, colour, curves }, order) => ({
    id: msg(str`curve ${channel}`),
    text: order === 0 && !channel.includes(',') ? msg(str`${channel} measured`) : channel,
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
      text: msg(str`fit, 90${thinSpace}% band`),
      colour: lead.colour,
      candidates: alongCurve(layout, hz, db, spread(0.12, 0.08, 0.16, 0.2, 0.24)),
    });
  }
  if (lead && layout.noise) {
    const { hz, noiseDb } = lead.curves.response;
    wishes.push({
      id: 'noise',
      text: msg('room noise'),
      colour: 'var(--soft)',
      candidates: alongCurve(layout, hz, noiseDb, spread(0.6, 0.5, 0.7)),
    });
  }
  return wishes;
}

/** Labels beside the roll-off marks; only their level where the chart is narrow. */
export function markWishes(input: ResponseInput, layout: ResponseLayout): LabelWish[] {
  const { scales } = layout;
  return (input.traces[0]?.marks ?? []).map(({ downDb, levelDb, hz, lowHz, highHz }) => {
    const level = `\u2212${String(downDb)}${thinSpace}dB`;
    const y = scales.y(levelDb);
    const left = scales.x(Math.min(lowHz, hz));
    const right = scales.x(Math.max(highHz, hz));
    return {
      id: msg(str`down ${String(downDb)}`),
      text:
        layout.width < narrowWidth
          ? level
          : msg(str`${level} at ${hzText(hz)}, ${intervalText([lowHz, highHz])}`),
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

/** Labels above the plot, over the crossover's line and the proposed one's. */
export function crossoverWishes(input: ResponseInput, layout: ResponseLayout): LabelWish[] {
  const { crossoverHz, proposedHz } = input;
  const both = isNumber(crossoverHz) && isNumber(proposedHz) && proposedHz !== crossoverHz;
  const at = (
    id: string,
    hz: number,
    text: string,
    side: 'left' | 'right' | 'middle',
  ): LabelWish => ({
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
  const wishes: LabelWish[] = [];
  if (isNumber(crossoverHz)) {
    wishes.push(
      at('crossover', crossoverHz, msg(str`crossover ${hzText(crossoverHz)}`), crossoverSide),
    );
  }
  if (both) {
    const side = crossoverSide === 'right' ? 'left' : 'right';
    wishes.push(at('proposed', proposedHz, msg(str`proposed ${hzText(proposedHz)}`), side));
  }
  return wishes;
}
