import type { Complex } from '../filter/complex';
import { bandEdges } from '../level/bands';

/** A filter's response is looked at so far below and above its midpoint; 63 dB down there. */
export const octaveReach = 8;

/**
 * Response at `hz` of the octave filter round `midHz`: third-order Butterworth band-pass between
 * the band's edges, H = 1/((s + 1)(s² + s + 1)), s = jΩ, Ω = (f/fm − fm/f)/(G^½ − G^−½); 1 at the
 * midpoint, −3.01 dB at the edges. Throws RangeError unless hz and midHz are positive.
 * Source: IEC 61260-1:2014, 5.4 and 5.5, for the edges; the Butterworth shape is common practice.
 */
export function octaveResponse(hz: number, midHz: number): Complex {
  if (!(hz > 0 && hz < Infinity)) throw new RangeError(`hz must be positive, got ${hz}`);
  const omega = (hz / midHz - midHz / hz) / (octaveWidthHz(midHz) / midHz);
  const square = omega * omega;
  const scale = 1 / (1 + square ** 3);
  // The denominator is 1 − 2Ω² + jΩ(2 − Ω²), its squared magnitude 1 + Ω⁶.
  return { re: (1 - 2 * square) * scale, im: -omega * (2 - square) * scale };
}

/** Width of the octave band round midHz in Hz, 0.7046 of it. Throws RangeError as bandEdges does. */
export function octaveWidthHz(midHz: number): number {
  const [low, high] = bandEdges(midHz, 1);
  return high - low;
}
