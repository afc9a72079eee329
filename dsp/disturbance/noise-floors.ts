import { bandTiles, type BandTiles } from './band-tiles';

const known = new WeakMap<Float64Array, Float64Array>();

/** Mean square of a silence per third-octave of the tiles; kept with the array. */
export function noiseFloors(silence: Float64Array, sampleRate: number): Float64Array {
  const kept = known.get(silence);
  if (kept) return kept;
  const tiles = bandTiles(silence, sampleRate);
  const floors = Float64Array.from(tiles.bands, ({ windowSeconds }, b) => {
    const edge = Math.ceil((0.5 * windowSeconds * sampleRate) / tiles.hop);
    const row = tiles.power.subarray(b * tiles.frames + edge, (b + 1) * tiles.frames - edge);
    return Math.max(trimmedMean(row), 1e-30);
  });
  known.set(silence, floors);
  return floors;
}

/** Without a silence: what the quietest tiles of each band hold, of those it has. */
export function quietestFloors(tiles: BandTiles): Float64Array {
  return Float64Array.from(tiles.bands, (_, b) => {
    const row = tiles.power.slice(b * tiles.frames, (b + 1) * tiles.frames).sort();
    // A fifth of noise tiles lies below a third of their mean.
    return Math.max(3 * (row[Math.floor(row.length / 5)] ?? 0), 1e-30);
  });
}

/** Mean of all but the loudest twentieth, so that one knock does not raise it; scaled back. */
function trimmedMean(row: Float64Array): number {
  if (row.length === 0) return 0;
  const sorted = row.slice().sort();
  const kept = sorted.subarray(0, Math.max(1, Math.ceil(0.95 * sorted.length)));
  const mean = kept.reduce((sum, value) => sum + value, 0) / kept.length;
  const whole = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
  return Math.min(whole, 1.25 * mean);
}
