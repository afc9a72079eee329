import { sweepRateSeconds, sweepTimeSeconds, type SweepSpec } from '../signal/sweep';
import type { BandTiles, TileBand } from './band-tiles';
import type { SweepBand } from './sweep-bands';

/** Share of power above which the take's own sound may hide what else a tile holds, re its noise. */
const hiding = 0.25;
/** Decays are followed so far, dB. */
const mostFallDb = 65;
const mostHarmonicFallDb = 30;
/** Harmonics re the response, dB: above and below the frequency where cones move far. */
const harmonicDb = { 2: -22, 3: -22, 4: -34, 5: -34, 6: -40, 7: -40 } as const;
const bassHz = 110;
const bassHarmonicDb = -10;

/** Decays bend: later they may go on from so far below at 0.4 of the slope, dB. */
const bendDb = 8;

export interface OwnSound {
  /** 1 where a tile may hold the take's own sound. */
  readonly hidden: Uint8Array;
  /** Power that a bent decay may still have in a tile. */
  readonly late: Float64Array;
}

/**
 * Where the take sounds itself: sweep, its decay in the room, harmonics up to the seventh; and the
 * ends of the segment.
 * `sweepAt` in samples, `arrivalSeconds` of the response. Both in the order of tiles.power.
 */
export function ownSound(
  tiles: BandTiles,
  swept: readonly SweepBand[],
  floors: Float64Array,
  sweep: SweepSpec,
  sweepAt: number,
  arrivalSeconds: number,
): OwnSound {
  const hidden = new Uint8Array(tiles.power.length);
  const late = new Float64Array(tiles.power.length);
  const { frames, hop, bands } = tiles;
  const rate = sweep.sampleRate;
  const frameAt = (seconds: number): number => ((seconds + arrivalSeconds) * rate + sweepAt) / hop;
  for (const [b, band] of bands.entries()) {
    const floor = floors[b] ?? 0;
    const decaySeconds = swept[b]?.decaySeconds ?? 0;
    const half = 0.5 * band.windowSeconds;
    const hide = (harmonic: number, db: number): void => {
      const low = Math.max((band.lowHz - band.leakHz) / harmonic, sweep.startHz);
      const high = Math.min((band.highHz + band.leakHz) / harmonic, sweep.endHz);
      if (high <= low || db <= 0) return;
      const fallSeconds =
        (decaySeconds / 60) * Math.min(db, harmonic > 1 ? mostHarmonicFallDb : mostFallDb);
      const first = Math.max(0, Math.floor(frameAt(sweepTimeSeconds(sweep, low) - half)));
      const last = frameAt(sweepTimeSeconds(sweep, high) + half + fallSeconds);
      hidden.fill(1, b * frames + first, b * frames + Math.min(frames, Math.ceil(last) + 1));
    };
    // A window that reaches beyond the segment hears it start or stop.
    const edge = Math.ceil((half * rate) / hop);
    hidden.fill(1, b * frames, b * frames + edge);
    hidden.fill(1, (b + 1) * frames - edge, (b + 1) * frames);
    const power = powerOf(swept[b], band, decaySeconds, sweep);
    hide(1, decibels(power / (hiding * floor)));
    for (const [key, usualDb] of Object.entries(harmonicDb)) {
      const harmonic = Number(key);
      const sourceHz = band.midHz / harmonic;
      const source = powerOf(swept[nearestBand(bands, sourceHz)], band, decaySeconds, sweep);
      const levelDb = sourceHz < bassHz ? bassHarmonicDb : usualDb;
      hide(harmonic, decibels(Math.max(power, source) / (hiding * floor)) + levelDb);
    }
    const passed = frameAt(sweepTimeSeconds(sweep, Math.min(band.highHz, sweep.endHz)) + half);
    for (let n = Math.max(0, Math.ceil(passed)); n < frames; n++) {
      const fallDb = bendDb + (24 * (n - passed) * hop) / rate / Math.max(decaySeconds, 0.01);
      const value = power * 10 ** (-fallDb / 10);
      if (value < 0.1 * floor) break;
      late[b * frames + n] = value;
    }
  }
  return { hidden, late };
}

function decibels(ratio: number): number {
  return ratio > 0 ? 10 * Math.log10(ratio) : -Infinity;
}

/** Power in the capture of a response of such energy, sounding in `band`. */
function powerOf(
  response: SweepBand | undefined,
  band: TileBand,
  decaySeconds: number,
  sweep: SweepSpec,
): number {
  if (!response) return 0;
  const thirdSeconds = (sweepRateSeconds(sweep) * Math.LN2) / 3;
  const seconds = Math.max(band.windowSeconds, decaySeconds / 13.8, thirdSeconds);
  return response.energy / response.gain / (seconds * sweep.sampleRate);
}

function nearestBand(bands: readonly TileBand[], hz: number): number {
  let best = 0;
  let nearest = Infinity;
  for (let b = 0; b < bands.length; b++) {
    const octaves = Math.abs(Math.log((bands[b]?.midHz ?? 1) / hz));
    if (octaves >= nearest) continue;
    nearest = octaves;
    best = b;
  }
  return best;
}
