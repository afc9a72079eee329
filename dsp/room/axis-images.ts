import { bandHz } from './bands';

/** Image sources along one axis of the room, nearest first. */
export interface AxisImages {
  readonly count: number;
  /** Image minus microphone, metres. */
  readonly offset: Float64Array;
  /** +1, or −1 where the image is mirrored. */
  readonly flip: Int8Array;
  /** Product of pressure reflections, [image·bands + band]. */
  readonly gains: Float64Array;
}

/**
 * Images (1 − 2p)·s + 2iL within `reach` of the microphone: |i − p| reflections at the wall 0 and
 * |i| at the wall L, each √(1 − absorption). Source: Allen and Berkley, JASA 1979.
 */
export function axisImages(
  length: number,
  source: number,
  microphone: number,
  walls: readonly [readonly number[], readonly number[]],
  reach: number,
): AxisImages {
  const found: { offset: number; i: number; p: number }[] = [];
  const most = Math.ceil(reach / (2 * length)) + 1;
  for (let i = -most; i <= most; i++) {
    for (const p of [0, 1]) {
      const offset = (1 - 2 * p) * source + 2 * i * length - microphone;
      if (Math.abs(offset) <= reach) found.push({ offset, i, p });
    }
  }
  found.sort((a, b) => Math.abs(a.offset) - Math.abs(b.offset));
  const bands = bandHz.length;
  const gains = new Float64Array(found.length * bands);
  for (const [n, { i, p }] of found.entries()) {
    for (let band = 0; band < bands; band++) {
      const near = Math.sqrt(1 - (walls[0][band] ?? 0));
      const far = Math.sqrt(1 - (walls[1][band] ?? 0));
      gains[n * bands + band] = near ** Math.abs(i - p) * far ** Math.abs(i);
    }
  }
  return {
    count: found.length,
    offset: Float64Array.from(found, ({ offset }) => offset),
    flip: Int8Array.from(found, ({ p }) => 1 - 2 * p),
    gains,
  };
}
