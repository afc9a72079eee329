import {
  coneResponse,
  polynomialResponse,
  sealedResponse,
  ventedAlignment,
  type HighPassResponse,
} from './box-response';
import { squared } from './complex';
import { crossingHz } from './crossing';

export type BoxKind = 'closed' | 'vented';

/** One shape of roll-off; stands for models at every f0 of the grid. */
export interface BoxShape {
  readonly kind: BoxKind;
  /** Log of the prior mass of this shape among all. */
  readonly logPrior: number;
  /** Power re the passband at f = f0·2^(u/36), u = LOWEST_STEP … HIGHEST_STEP. */
  readonly power: Float64Array;
  /** Power the microphone meets: the cone's and what the room returns, at the cone; else `power`. */
  readonly heard: Float64Array;
  /** f3/f0, f6/f0, f10/f0. */
  readonly ratios: readonly [number, number, number];
}

/** Steps of f0 per octave: 2 %. */
export const STEPS_PER_OCTAVE = 36;
/** f0 = 15·2^(i/36) Hz for i in this range: 8.9 to 231 Hz. */
export const FIRST_F0_STEP = -27;
export const LAST_F0_STEP = 142;
/** Curves are read at 15·2^(j/36) Hz for j in this range: 10 to 500 Hz. */
export const FIRST_CURVE_STEP = -21;
export const LAST_CURVE_STEP = 182;
export const LOWEST_STEP = FIRST_CURVE_STEP - LAST_F0_STEP;
const HIGHEST_STEP = LAST_CURVE_STEP - FIRST_F0_STEP;

const CLOSED_Q = steps(0.4, 1.4, 0.1);
const VENTED_T = steps(-1, 1, 0.25);
const CONE_LOSS = steps(0, 0.36, 0.06);
const ROOM_AT_CONE = 10 ** -2.5;

const cache = new Map<string, readonly BoxShape[]>();

/**
 * Shapes a fit tries: closed boxes of Q 0.4 to 1.4 and vented boxes over the line of alignments,
 * equal mass for the two kinds. `cone`: the microphone stands at the cone of a box that may be
 * vented, so the port is missing from what it hears.
 */
export function boxShapes(cone: boolean): readonly BoxShape[] {
  const key = cone ? 'cone' : 'whole';
  const known = cache.get(key);
  if (known) return known;
  const shapes = normalise([...closedShapes(), ...ventedShapes(cone)]);
  cache.set(key, shapes);
  return shapes;
}

function closedShapes(): BoxShape[] {
  return CLOSED_Q.map((q) => {
    const response = sealedResponse(1, q);
    return shapeOf('closed', -0.5 * ((q - 0.78) / 0.25) ** 2, response, response);
  });
}

function ventedShapes(cone: boolean): BoxShape[] {
  return VENTED_T.flatMap((t) => {
    const d = ventedAlignment(t);
    const whole = polynomialResponse(1, d);
    if (!cone) return [shapeOf('vented', 0, whole, whole)];
    return CONE_LOSS.map((loss) =>
      shapeOf('vented', 0, whole, coneResponse(1, d, (d.a3 / d.a1) * (1 - loss))),
    );
  });
}

function shapeOf(
  kind: BoxKind,
  logPrior: number,
  whole: HighPassResponse,
  heard: HighPassResponse,
): BoxShape {
  const power = tabulate((x) => squared(whole(x)));
  const ratio = (db: number): number => crossingHz(whole, db, 100, 0.01) ?? 1;
  return {
    kind,
    logPrior,
    power,
    heard:
      heard === whole
        ? power
        : tabulate((x) => squared(heard(x)) + ROOM_AT_CONE * squared(whole(x))),
    ratios: [ratio(10 * Math.log10(2)), ratio(6), ratio(10)],
  };
}

function tabulate(power: (x: number) => number): Float64Array {
  return Float64Array.from({ length: HIGHEST_STEP - LOWEST_STEP + 1 }, (_, i) =>
    power(2 ** ((i + LOWEST_STEP) / STEPS_PER_OCTAVE)),
  );
}

/** Gives each kind half of the prior mass. */
function normalise(shapes: readonly BoxShape[]): readonly BoxShape[] {
  const mass = { closed: 0, vented: 0 };
  for (const shape of shapes) mass[shape.kind] += Math.exp(shape.logPrior);
  return shapes.map((shape) => ({
    ...shape,
    logPrior: shape.logPrior - Math.log(2 * mass[shape.kind]),
  }));
}

function steps(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
}
