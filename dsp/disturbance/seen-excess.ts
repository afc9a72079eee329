import type { BandTiles } from './band-tiles';

/** Frames to either side averaged before a tile is judged, and power over the floor that counts. */
const reach = 2;
const countsFrom = 3;

/**
 * Power over the take's own noise in tiles that the take's own sound does not hide; 0 in hidden
 * tiles and where it does not stand out. Same order as tiles.power.
 */
export function seenExcess(tiles: BandTiles, own: Uint8Array, floors: Float64Array): Float64Array {
  const { frames, bands, power } = tiles;
  const seen = new Float64Array(power.length);
  for (let b = 0; b < bands.length; b++) {
    const floor = floors[b] ?? 0;
    for (let n = 0; n < frames; n++) {
      const at = b * frames + n;
      if (own[at]) continue;
      let sum = 0;
      let count = 0;
      for (let m = Math.max(0, n - reach); m <= Math.min(frames - 1, n + reach); m++) {
        if (own[b * frames + m]) continue;
        sum += power[b * frames + m] ?? 0;
        count++;
      }
      if (sum > countsFrom * floor * count) seen[at] = Math.max(0, (power[at] ?? 0) - floor);
    }
  }
  return seen;
}
