import { sweepRateSeconds, sweepTimeSeconds, type SweepSpec } from '../signal/sweep';
import type { BandTiles, TileBand } from './band-tiles';
import type { SweepBand } from './sweep-bands';

/** Share of power above which the take's own sound may hide what else a tile holds, re its noise. */
const hiding = 0.25;
/** Decays are followed so far, dB. */
const mostFallDb = 50;
/** Harmonics re the response, dB: above and below the frequency where cones move far. */
const harmonicDb = { 2: -22, 3: -22, 4: -34, 5: -34, 6: -40, 7: -40 } as const;
const bassHz = 110;
const bassHarmonicDb = -10;

/**
 * 1 where a tile may hold the take's own sound: sweep, its decay in the room, harmonics up to the
 * seventh. `sweepAt` in samples, `arrivalSeconds` of the response. Same order as tiles.power.
 */
export function ownSound(
  tiles: BandTiles,
  swept: readonly SweepBand[],
  floors: Float64Array,
  sweep: SweepSpec,
  sweepAt: number,
  arrivalSeconds: number,
): Uint8Array {
  const own = new Uint8Array(tiles.power.length);
  const { frames, hop, bands } = tiles;
  const rate = sweep.sampleRate;
  for (const [b, band] of bands.entries()) {
    const fallOf = (db: number): number => {
      const { decaySeconds } = swept[b] ?? { decaySeconds: 0 };
      return (decaySeconds / 60) * Math.min(db, mostFallDb);
    };
    const mark = (harmonic: number, overDb: number): void => {
      const low = Math.max((band.lowHz - band.leakHz) / harmonic, sweep.startHz);
      const high = Math.min((band.highHz + band.leakHz) / harmonic, sweep.endHz);
      if (high <= low || overDb <= 0) return;
      const half = 0.5 * band.windowSeconds;
      const from = sweepTimeSeconds(sweep, low) + arrivalSeconds - half;
      const to = sweepTimeSeconds(sweep, high) + arrivalSeconds + half + fallOf(overDb);
      const first = Math.max(0, Math.floor((from * rate + sweepAt) / hop));
      const last = Math.min(frames - 1, Math.ceil((to * rate + sweepAt) / hop));
      own.fill(1, b * frames + first, b * frames + last + 1);
    };
    const floor = hiding * (floors[b] ?? 0);
    mark(1, overDb(bands, swept, sweep, b, b, floor));
    for (const [key, db] of Object.entries(harmonicDb)) {
      const harmonic = Number(key);
      const source = nearestBand(bands, band.midHz / harmonic);
      const level = band.midHz / harmonic < bassHz ? bassHarmonicDb : db;
      const over = Math.max(
        overDb(bands, swept, sweep, b, b, floor),
        overDb(bands, swept, sweep, b, source, floor),
      );
      mark(harmonic, over + level);
    }
  }
  return own;
}

/** Power of the response of band `source`, sounding in band `b`, re a floor, dB. */
function overDb(
  bands: readonly TileBand[],
  swept: readonly SweepBand[],
  sweep: SweepSpec,
  b: number,
  source: number,
  floor: number,
): number {
  const from = swept[source];
  const band = bands[b];
  if (!from || !band || from.energy <= 0) return -Infinity;
  const octaveSeconds = sweepRateSeconds(sweep) * Math.LN2;
  const decay = (swept[b]?.decaySeconds ?? 0) / 13.8;
  const seconds = Math.max(band.windowSeconds, decay, octaveSeconds / 3);
  const power = from.energy / from.gain / (seconds * sweep.sampleRate);
  return floor > 0 ? 10 * Math.log10(power / floor) : Infinity;
}

function nearestBand(bands: readonly TileBand[], hz: number): number {
  let best = 0;
  for (const [b, { midHz }] of bands.entries()) {
    if (Math.abs(Math.log(midHz / hz)) < Math.abs(Math.log((bands[best]?.midHz ?? 1) / hz)))
      best = b;
  }
  return best;
}
