import { lengthIntervalText, lengthNumber, shortLengthText } from '../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import { scaleLinear } from 'd3';
import { envelopePath } from './envelope-path';
import type { ChannelReading } from '../../src/reading/reading';
import { isNumber, numberText } from '../../src/locale/number-text';
import { placeLabels } from './place-labels';
import { laneWords, type Lane } from './lane';

export interface LanesInput {
  readonly lanes: readonly Lane[];
  readonly referenceDistanceMetres: number;
  readonly speedOfSound: number;
  readonly width: number;
  readonly textWidth: (text: string, strong: boolean) => number;
}

export interface DrawnLane {
  readonly lane: Lane;
  readonly top: number;
  /** The line the envelope stands on. */
  readonly base: number;
  readonly envelope: string;
  readonly arrival: LaneMark | null;
  readonly ceiling: LaneMark | null;
}

interface LaneMark {
  readonly x: number;
  readonly text: string;
  readonly textX: number;
  readonly textY: number;
}

export interface LanesLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly laneHeight: number;
  readonly ticks: readonly { readonly x: number; readonly time: string; readonly path: string }[];
  readonly lanes: readonly DrawnLane[];
}

const furthestSeconds = 0.03;

/** Times of flight to show: everything that arrived, and a fair part of what follows. */
export function flightDomain(
  lanes: readonly Lane[],
  referenceSeconds: number,
): readonly [number, number] {
  let first = referenceSeconds - 0.0025;
  let last = referenceSeconds + 0.0055;
  for (const { reading } of lanes) {
    if (!isNumber(reading?.arrivalSeconds)) continue;
    const arrival = Math.min(furthestSeconds, reading.arrivalSeconds) + referenceSeconds;
    if (arrival < 0) continue;
    first = Math.min(first, arrival - 0.001);
    last = Math.max(last, arrival + 0.004);
  }
  return [Math.max(0, Math.floor(first * 1000) / 1000), Math.ceil(last * 1000) / 1000];
}

function laneHeightFor(count: number): number {
  if (count <= 6) return 52;
  return count <= 12 ? 44 : 34;
}

/** Lays out all lanes for a width in pixels. */
export function layOutLanes(input: LanesInput): LanesLayout {
  const { lanes, width, speedOfSound } = input;
  const referenceSeconds = input.referenceDistanceMetres / speedOfSound;
  const gutter = Math.max(40, ...lanes.map(({ channel }) => input.textWidth(channel, true) + 12));
  const [left, right, top] = [Math.ceil(gutter), Math.max(160, width - 8), 26];
  const laneHeight = laneHeightFor(lanes.length);
  const bottom = top + lanes.length * laneHeight;
  const x = scaleLinear().domain(flightDomain(lanes, referenceSeconds)).range([left, right]);
  const ticks = x.ticks(Math.max(2, Math.floor((right - left) / 74)));
  return {
    width,
    height: bottom + 24,
    left,
    right,
    top,
    bottom,
    laneHeight,
    ticks: ticks.map((seconds) => ({
      x: x(seconds),
      time: numberText(seconds * 1000, seconds * 1000 === Math.round(seconds * 1000) ? 0 : 1),
      path: lengthNumber(seconds * speedOfSound),
    })),
    lanes: lanes.map((lane, index) => {
      const laneTop = top + index * laneHeight;
      const base = laneTop + laneHeight - 8;
      const curves = lane.stage === 'read' ? lane.reading?.curves : null;
      return {
        lane,
        top: laneTop,
        base,
        envelope: curves
          ? envelopePath(curves.envelope, referenceSeconds, x, base, laneHeight - 16)
          : '',
        ...marksOf(input, lane, {
          x,
          left,
          right,
          laneTop,
          laneBottom: laneTop + laneHeight + 3,
          base,
          referenceSeconds,
        }),
      };
    }),
  };
}

interface LaneFrame {
  readonly x: (seconds: number) => number;
  readonly left: number;
  readonly right: number;
  readonly laneTop: number;
  readonly laneBottom: number;
  readonly base: number;
  readonly referenceSeconds: number;
}

function marksOf(
  input: LanesInput,
  lane: Lane,
  frame: LaneFrame,
): { arrival: LaneMark | null; ceiling: LaneMark | null } {
  const { reading } = lane;
  if (lane.stage !== 'read' || !reading || laneWords(lane)) return { arrival: null, ceiling: null };
  const { x, left, right, laneTop, laneBottom, base, referenceSeconds } = frame;
  const within = (seconds: number) => Math.max(left, Math.min(right, x(seconds)));
  const wanted = [
    isNumber(reading.arrivalSeconds)
      ? {
          id: 'arrival',
          x: within(reading.arrivalSeconds + referenceSeconds),
          text: distanceText(reading),
          strong: true,
        }
      : null,
    isNumber(reading.ceilingPathMetres)
      ? {
          id: 'ceiling',
          x: within(reading.ceilingPathMetres / input.speedOfSound),
          text: ceilingText(reading.ceilingPathMetres, input.width),
          strong: false,
        }
      : null,
  ].filter((mark) => mark !== null);
  const lines = wanted.map((mark) => ({
    left: mark.x - 3,
    right: mark.x + 3,
    top: laneTop,
    bottom: base,
  }));
  const placed = placeLabels(
    wanted.map(({ id, x: at, text, strong }) => {
      const width = Math.ceil(input.textWidth(text, strong));
      const y = laneTop + 11;
      return {
        id,
        width,
        height: 15,
        candidates: [
          { x: at + 7, y },
          { x: at - width - 7, y },
        ],
      };
    }),
    { left, right: right + 8, top: laneTop, bottom: laneBottom },
    [],
    lines,
  );
  const mark = (id: string): LaneMark | null => {
    const index = wanted.findIndex((one) => one.id === id);
    const [want, place] = [wanted[index], placed[index]];
    if (!want || !place) return null;
    return { x: want.x, text: place.free ? want.text : '', textX: place.x, textY: place.y };
  };
  return { arrival: mark('arrival'), ceiling: mark('ceiling') };
}

const narrowMetres = 0.1;

/** Distance, with its interval where that is wide enough to matter. */
function distanceText({ distanceMetres, distanceInterval }: ChannelReading): string {
  if (!distanceInterval || !(distanceInterval[1] - distanceInterval[0] > narrowMetres)) {
    return shortLengthText(distanceMetres);
  }
  return `${shortLengthText(distanceMetres, 1)}, ${lengthIntervalText(distanceInterval, 1)}`;
}

function ceilingText(metres: number, width: number): string {
  return width < 480
    ? msg(str`ceiling ${shortLengthText(metres)}`)
    : msg(str`${shortLengthText(metres)} over the ceiling`);
}
