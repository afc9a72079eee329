import type { BandTiles, TileBand } from './band-tiles';
import type { Span } from './find-events';
import type { OwnSound } from './own-sound';

/** Time averaged before a tile is judged, in windows of its band and at least, seconds. */
const windowsAveraged = 1.5;
const leastSeconds = 0.05;
/** Noise exceeds what counts in about one mean of 10,000; less than 3 dB never counts. */
const deviations = 3.7;
const leastRatio = 2;

/**
 * Power over the take's own noise in tiles that the take's own sound does not hide; 0 in hidden
 * tiles and where it does not stand out. Same order as tiles.power.
 */
export function seenExcess(
  tiles: BandTiles,
  own: OwnSound,
  floors: Float64Array,
  sampleRate: number,
): Float64Array {
  const { frames, bands, power, hop } = tiles;
  const { hidden, late } = own;
  const seen = new Float64Array(power.length);
  for (const [b, band] of bands.entries()) {
    const floor = floors[b] ?? 0;
    const seconds = cellSeconds(band);
    const reach = Math.round((0.5 * seconds * sampleRate) / hop);
    const countsFrom = new Float64Array(2 * reach + 2);
    for (let count = 0; count < countsFrom.length; count++) {
      const seconds = band.windowSeconds / 2 + (count * hop) / sampleRate;
      countsFrom[count] = highMean(2 * Math.max(1, (band.highHz - band.lowHz) * seconds));
    }
    for (let n = 0; n < frames; n++) {
      const at = b * frames + n;
      if (hidden[at]) continue;
      let sum = 0;
      let count = 0;
      for (let m = Math.max(0, n - reach); m <= Math.min(frames - 1, n + reach); m++) {
        if (hidden[b * frames + m]) continue;
        sum += power[b * frames + m] ?? 0;
        count++;
      }
      if (sum > ((countsFrom[count] ?? 0) * floor + (late[at] ?? 0)) * count)
        seen[at] = Math.max(0, (power[at] ?? 0) - floor);
    }
  }
  return seen;
}

/** Mean over its expectation of a power with so many degrees of freedom that is rarely exceeded. */
function highMean(freedom: number): number {
  // Wilson and Hilferty, PNAS 17 (1931).
  const spread = 2 / (9 * freedom);
  return Math.max(leastRatio, (1 - spread + deviations * Math.sqrt(spread)) ** 3);
}

/** Time over which tiles of a band are judged together. */
function cellSeconds({ windowSeconds }: TileBand): number {
  return Math.max(leastSeconds, windowsAveraged * windowSeconds);
}

/** How many judgements, independent of each other, an event rests on. */
export function countEvidence(
  seen: Float64Array,
  { bands, frames, hop }: BandTiles,
  { from, to }: Span,
  sampleRate: number,
): number {
  let cells = 0;
  for (const [b, band] of bands.entries()) {
    const share = hop / sampleRate / cellSeconds(band);
    for (let n = from; n < to; n++) if ((seen[b * frames + n] ?? 0) > 0) cells += share;
  }
  return cells;
}
