import { analyseSegment, type SegmentAnalysis, type SegmentEvent } from './analyse-segment';
import type { Disturbance, DisturbanceInput } from './disturbance';
import { isNewlyHumming } from './newly-humming';
import { eventTraits, nameEvent } from './name-event';

export type { Disturbance, DisturbanceInput } from './disturbance';

/** What moves no third-octave by as much is no disturbance, dB. */
const leastErrorDb = 0.5;
/** A band belongs to an event when its power over the take's noise comes this near the highest. */
const nearHighestDb = 20;
/** Short and narrow is the tail of a mode of the room. */
const lingersSeconds = 0.5;
const leastOctaves = 1.2;

/**
 * Sounds in one sweep's segment that are not the take's and may move the response by 0.5 dB or
 * more in a third-octave, in order of time. Looks into third-octaves and frames of time that the
 * sweep, its decay and its harmonics leave free, against the take's silence; under them it goes on
 * with the event's own course and spectrum. Without a silence steady noise goes unnoticed. What
 * the take's own noise hides, or less than it moves the response, goes unnoticed too. Audio of
 * other sweeps in the segment counts as disturbance unless they are given. Throws RangeError for a
 * segment that ends before its sweep.
 */
export function findDisturbances(input: DisturbanceInput): Disturbance[] {
  const { heard, sweepAt, sweep } = input;
  if (!(sweepAt >= 0 && sweepAt + sweep.lengthSamples <= heard.length)) {
    throw new RangeError(`heard must hold the whole sweep from ${sweepAt}, got ${heard.length}`);
  }
  const analysis = analyseSegment(input);
  const frameSeconds = analysis.tiles.hop / sweep.sampleRate;
  const told = analysis.events
    .filter(({ errorDb }) => errorDb >= leastErrorDb)
    .map((event) => ({
      event,
      traits: eventTraits(event.shape, analysis.seen, analysis.tiles, frameSeconds),
    }))
    .filter(({ traits }) => traits.seconds > lingersSeconds || traits.octaves > leastOctaves);
  if (told.length === 0) return [];
  const humming = isNewlyHumming(input);
  return told.map(({ event, traits }) =>
    describe(event, nameEvent(traits, humming), analysis, input),
  );
}

function describe(
  { shape, errorDb, errorHz }: SegmentEvent,
  kind: Disturbance['kind'],
  { tiles, floors, seen }: SegmentAnalysis,
  { sweepAt, sweep }: DisturbanceInput,
): Disturbance {
  const frameSeconds = tiles.hop / sweep.sampleRate;
  const { from, to } = shape.span;
  const level = tiles.bands.map((_, b) => (shape.spectrum[b] ?? 0) / (floors[b] ?? 1));
  const highest = Math.max(...level);
  const near = level.map((value) => value > highest * 10 ** (-nearHighestDb / 10));
  let sum = 0;
  let count = 0;
  for (const [b, counts] of near.entries()) {
    if (!counts) continue;
    for (let n = from; n < to; n++) {
      const value = seen[b * tiles.frames + n] ?? 0;
      if (value <= 0) continue;
      sum += value / (floors[b] ?? 1);
      count++;
    }
  }
  return {
    kind,
    fromSeconds: from * frameSeconds - sweepAt / sweep.sampleRate,
    toSeconds: to * frameSeconds - sweepAt / sweep.sampleRate,
    lowHz: tiles.bands[near.indexOf(true)]?.lowHz ?? 0,
    highHz: tiles.bands[near.lastIndexOf(true)]?.highHz ?? 0,
    excessDb: count > 0 ? 10 * Math.log10(1 + sum / count) : 0,
    errorDb,
    errorHz,
  };
}
