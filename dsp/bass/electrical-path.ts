import { filterResponse, type FilterSpec } from '../filter/analogue';
import { multiply, one } from '../filter/complex';
import type { SeatTransfers, Transfer } from './transfer';

/** What a processor does to a signal on its way to a speaker. */
export interface ElectricalPath {
  /** In series; none for full range. */
  readonly filters: readonly FilterSpec[];
  /** Later when above 0; default 0. */
  readonly delaySeconds?: number;
  /** Default 0. */
  readonly gainDb?: number;
  /** Default false. */
  readonly inverted?: boolean;
}

/** Complex response of a path on a grid. Throws RangeError for numbers that are not finite. */
export function pathResponse(path: ElectricalPath, hz: Float64Array): Transfer {
  const { filters, delaySeconds = 0, gainDb = 0, inverted = false } = path;
  if (!Number.isFinite(delaySeconds) || !Number.isFinite(gainDb)) {
    throw new RangeError(`delay and gain must be finite, got ${delaySeconds} s, ${gainDb} dB`);
  }
  const gain = 10 ** (gainDb / 20) * (inverted ? -1 : 1);
  const re = new Float64Array(hz.length);
  const im = new Float64Array(hz.length);
  for (const [k, f] of hz.entries()) {
    const filtered = filters.reduce((h, spec) => multiply(h, filterResponse(spec, f)), one);
    const turn = -2 * Math.PI * f * delaySeconds;
    const [cos, sin] = [gain * Math.cos(turn), gain * Math.sin(turn)];
    re[k] = filtered.re * cos - filtered.im * sin;
    im[k] = filtered.re * sin + filtered.im * cos;
  }
  return { re, im };
}

/** a · b, entry by entry. Throws RangeError for lengths that differ. */
export function multiplyTransfers(a: Transfer, b: Transfer): Transfer {
  if (a.re.length !== b.re.length || a.im.length !== b.im.length) {
    throw new RangeError(`transfers must share a grid, got ${a.re.length} and ${b.re.length}`);
  }
  const re = new Float64Array(a.re.length);
  const im = new Float64Array(a.re.length);
  for (let k = 0; k < re.length; k++) {
    const [x, y] = [a.re[k] ?? 0, a.im[k] ?? 0];
    const [u, v] = [b.re[k] ?? 0, b.im[k] ?? 0];
    re[k] = x * u - y * v;
    im[k] = x * v + y * u;
  }
  return { re, im };
}

/** A source at every seat as it sounds through a path. */
export function throughPath(
  seats: SeatTransfers,
  path: ElectricalPath,
  hz: Float64Array,
): SeatTransfers {
  const response = pathResponse(path, hz);
  return seats.map((seat) => multiplyTransfers(seat, response));
}
