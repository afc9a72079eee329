import { sweepTimeSeconds } from '../signal/sweep';
import type { ImpulseResponse } from '../response/impulse-response';
import { bandTiles, type BandTiles } from './band-tiles';
import type { DisturbanceInput } from './disturbance';
import { eventShape, type EventShape } from './event-shape';
import { findEvents } from './find-events';
import { followsSweep } from './follows-sweep';
import { noiseFloors, quietestFloors } from './noise-floors';
import { ownSound } from './own-sound';
import { energyInWindow, errorOf } from './response-error';
import { countEvidence, seenExcess } from './seen-excess';
import { sweepBands } from './sweep-bands';

/** Something heard in a segment, whether it matters or not. */
export interface SegmentEvent {
  readonly shape: EventShape;
  /** In the band it moves most; 0 when it moves none for certain, or is the sweep's own distortion. */
  readonly errorDb: number;
  readonly errorHz: number;
}

export interface SegmentAnalysis {
  readonly tiles: BandTiles;
  readonly floors: Float64Array;
  readonly seen: Float64Array;
  readonly events: readonly SegmentEvent[];
}

/** Energy over that of the take's own noise, and error over its own, from which on one is sure. */
const sureEnergy = 1.5;
const sureError = 2.5;
/** Chance gives one or two. */
const leastEvidence = 4;
/** Of the energy measured in a band at least this share is its response. */
const leastResponse = 0.05;

/** Events of a segment and how far each may move the response. */
export function analyseSegment(input: DisturbanceInput): SegmentAnalysis {
  const { heard, sweepAt, sweep, ir, silence, playedHz = [0, Infinity], others = [] } = input;
  const rate = sweep.sampleRate;
  const tiles = bandTiles(heard, rate);
  const floors = silence ? noiseFloors(silence, rate) : quietestFloors(tiles);
  const arrivalSeconds = arrivalOf(ir);
  const swept = sweepBands(ir, sweep, floors, arrivalSeconds);
  const own = ownSound(tiles, swept, floors, sweep, sweepAt, arrivalSeconds);
  for (const other of others) {
    const itsArrival = arrivalOf(other.ir);
    const itsBands = sweepBands(other.ir, other.sweep, floors, itsArrival);
    const its = ownSound(tiles, itsBands, floors, other.sweep, other.sweepAt, itsArrival);
    for (let at = 0; at < own.hidden.length; at++) {
      own.hidden[at] = Math.max(own.hidden[at] ?? 0, its.hidden[at] ?? 0);
      own.late[at] = (own.late[at] ?? 0) + (its.late[at] ?? 0);
    }
  }
  const seen = seenExcess(tiles, own, floors, rate);
  const starts = tiles.bands.map(
    ({ midHz }) => sweepAt - ir.zeroIndex + sweepTimeSeconds(sweep, midHz) * rate,
  );
  const weights = swept.map((band, b) =>
    band.swept && band.energy > 0
      ? band.gain / band.energy
      : 1e-3 / ((floors[b] ?? 0) * heard.length),
  );
  const events = findEvents(seen, own.hidden, tiles, weights, rate).map((span): SegmentEvent => {
    const shape = eventShape(seen, tiles, own.hidden, weights, floors, span);
    const energies = energyInWindow(
      shape,
      seen,
      own.hidden,
      tiles,
      swept,
      starts,
      ir.samples.length,
    );
    let errorDb = 0;
    let errorHz = 0;
    for (const [b, { lowHz, highHz, midHz }] of tiles.bands.entries()) {
      const band = swept[b];
      if (!band?.swept || band.energy <= 0) continue;
      if (highHz < playedHz[0] || lowHz > playedHz[1]) continue;
      const energy = energies[b] ?? 0;
      const response = Math.max(band.energy - energy, leastResponse * band.energy);
      const error = errorOf(energy / response, highHz - lowHz);
      const ownError = errorOf(band.noise / band.energy, highHz - lowHz);
      if (energy < sureEnergy * band.noise || error < sureError * ownError) continue;
      if (error > errorDb) [errorDb, errorHz] = [error, midHz];
    }
    const counts =
      countEvidence(seen, tiles, span, rate) >= leastEvidence &&
      !followsSweep(seen, own.hidden, tiles, weights, shape, sweep, sweepAt);
    return { shape, errorDb: counts ? errorDb : 0, errorHz };
  });
  return { tiles, floors, seen, events };
}

/** Speakers arrive this near to zero delay, seconds, because marks give the clock. */
const arrivesWithin = 0.12;

/** Seconds from zero delay to the response's peak; what is loud further off is something else. */
function arrivalOf({ samples, zeroIndex, sampleRate }: ImpulseResponse): number {
  const reach = Math.round(arrivesWithin * sampleRate);
  let peak = zeroIndex;
  for (let n = Math.max(0, zeroIndex - reach); n <= zeroIndex + reach; n++) {
    if (Math.abs(samples[n] ?? 0) > Math.abs(samples[peak] ?? 0)) peak = n;
  }
  return (peak - zeroIndex) / sampleRate;
}
