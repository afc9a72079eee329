import { msg, str } from '@lit/localize';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { ChannelLabel } from '../system/channel';
import { isSub } from '../system/channel-names';
import { layoutFromName } from '../system/layout';
import { isTrouble } from '../trouble';
import { moveLevelBetween } from './move-level';
import { movedNote } from './moved-note';
import { moveBass } from './read-bass';
import type { CaptureReading, ChannelReading, ClockReading, Readings } from './reading';
import { isDamaged } from './segments-to-repeat';
import { untimed } from './untimed';

/**
 * Readings of several takes of one position as one, oldest first. Each speaker's is the newest
 * without a fault, else the newest. Every take holds the reference speaker's own sweep: arrivals
 * are relative to it already, levels are shifted by the difference of its level. A take with
 * another reference joins by absolute time only, and without it gives no distances. Throws
 * RangeError for an empty list and for takes of different layouts.
 */
export function joinReadings(readings: readonly Readings[]): Readings {
  const [first] = readings;
  if (!first) throw new RangeError('joinReadings needs at least one take, got 0');
  const stranger = readings.find(({ layout }) => layout !== first.layout);
  if (stranger) {
    throw new RangeError(`takes must share layout ${first.layout}, got ${stranger.layout}`);
  }
  if (readings.length === 1) return first;
  const chosen = chooseTakes(readings);
  const base = chosen.get(first.reference) ?? first;
  const takenFrom = (take: Readings): ChannelLabel[] =>
    [...chosen].flatMap(([label, from]) => (from === take ? [label] : []));
  const notes = [...new Set(readings.flatMap((take) => take.notes))];
  const moved = readings.flatMap((take) => movedNote(base, take) ?? []);
  return {
    ...base,
    simulated: readings.some(({ simulated }) => simulated),
    clock: joinClocks(base, chosen),
    capture: joinCaptures(readings, chosen),
    channels: [...chosen].flatMap(([label, take]) => {
      const reading = readingIn(take, label);
      return reading ? [shiftTo(base, take, reading)] : [];
    }),
    notes: [...notes, ...new Set(moved)],
    joined: readings.map((take) => ({ takeId: take.takeId, channels: takenFrom(take) })),
  };
}

/** The take each speaker's reading comes from, speakers in the order of the layout. */
function chooseTakes(readings: readonly Readings[]): Map<ChannelLabel, Readings> {
  const read = new Set(readings.flatMap(({ channels }) => channels.map(({ channel }) => channel)));
  const layout = layoutFromName(readings[0]?.layout ?? '');
  const order = isTrouble(layout) ? [] : layout.channels.map(({ label }) => label);
  const chosen = new Map<ChannelLabel, Readings>();
  for (const label of new Set([...order, ...read])) {
    const takes = takesFor(label, readings);
    const whole = takes.filter((take) => {
      const reading = readingIn(take, label);
      return reading && !isDamaged(reading);
    });
    const best = whole.at(-1) ?? takes.at(-1);
    if (best) chosen.set(label, best);
  }
  return chosen;
}

/**
 * Takes a speaker's reading may come from. Those of subs alone hold their reference only to be
 * joined by it: through a processor its bass then comes from the subs that were on.
 */
function takesFor(label: ChannelLabel, readings: readonly Readings[]): readonly Readings[] {
  const takes = readings.filter((take) => readingIn(take, label));
  const isBorrowed = ({ reference, channels }: Readings): boolean =>
    label === reference &&
    channels.some(({ channel }) => isSub(channel)) &&
    channels.every(({ channel }) => channel === reference || isSub(channel));
  const own = takes.filter((take) => !isBorrowed(take));
  return own.length > 0 ? own : takes;
}

function readingIn({ channels }: Readings, label: ChannelLabel): ChannelReading | undefined {
  return channels.find(({ channel }) => channel === label);
}

/** A reading of `take` as it would be in `base`, of the same position. */
function shiftTo(base: Readings, take: Readings, reading: ChannelReading): ChannelReading {
  if (take === base) return reading;
  return take.reference === base.reference
    ? shiftByReference(base, take, reading)
    : shiftByClock(base, take, reading);
}

function shiftByReference(base: Readings, take: Readings, reading: ChannelReading): ChannelReading {
  const absolute = base.absolute && take.absolute;
  const farther = absolute ? 0 : base.referenceDistanceMetres - take.referenceDistanceMetres;
  const move = (metres: number | null): number | null =>
    metres === null ? null : metres + farther;
  const between = reading.distanceInterval;
  const louder = levelDifference(base, take);
  const [its, own] = [readingIn(take, base.reference), readingIn(base, base.reference)];
  const level = its && own ? moveLevelBetween(reading, its, own) : null;
  const unsure = level === null && reading.levelDb !== null;
  return {
    ...reading,
    distanceMetres: move(reading.distanceMetres),
    distanceInterval: between && [between[0] + farther, between[1] + farther],
    ceilingPathMetres: move(reading.ceilingPathMetres),
    ...(level ?? withoutInterval(reading)),
    ...(reading.bass && { bass: louder === null ? null : moveBass(reading.bass, louder, 0) }),
    notes: unsure ? [...reading.notes, levelNote(take)] : reading.notes,
  };
}

/** A level that is not set against those of the base may be off by any change of gain. */
function withoutInterval({ levelInterval }: ChannelReading): Partial<ChannelReading> {
  return levelInterval ? { levelInterval: null } : {};
}

function levelNote({ reference }: Readings): string {
  return msg(
    str`This level comes from another take and could not be set against that of ${reference}: it holds only if no gain was changed between the takes.`,
  );
}

/** How much louder the reference speaker is in `base` than in `take`, dB; null when unknown. */
function levelDifference(base: Readings, take: Readings): number | null {
  const own = readingIn(base, base.reference)?.levelDb ?? null;
  const its = readingIn(take, base.reference)?.levelDb ?? null;
  return own === null || its === null ? null : own - its;
}

/** Without a speaker in common only the loopback's clock relates two takes. */
function shiftByClock(base: Readings, take: Readings, reading: ChannelReading): ChannelReading {
  const { distanceMetres, distanceInterval } = reading;
  const beside = { ...reading, ...withoutInterval(reading) };
  if (!base.absolute || !take.absolute) {
    const bass = reading.bass && { bass: null };
    const note = msg(
      str`No distance: this take holds no sweep of ${base.reference} to set its times against. A loopback would settle it.`,
    );
    return { ...beside, ...untimed, ...bass, notes: [...reading.notes, note] };
  }
  const arrival = (metres: number): number =>
    (metres - base.referenceDistanceMetres) / speedOfSound(base.temperatureCelsius);
  const arrived = distanceMetres === null ? null : arrival(distanceMetres);
  const later =
    arrived === null || reading.arrivalSeconds === null ? null : arrived - reading.arrivalSeconds;
  return {
    ...beside,
    arrivalSeconds: arrived,
    ...(reading.bass && { bass: later === null ? null : moveBass(reading.bass, 0, later) }),
    arrivalInterval: distanceInterval && [
      arrival(distanceInterval[0]),
      arrival(distanceInterval[1]),
    ],
  };
}

/** The base's clock; faults of the segments that are still in use, and those outside all segments. */
function joinClocks(base: Readings, chosen: ReadonlyMap<ChannelLabel, Readings>): ClockReading {
  const faults = [...new Set([base, ...chosen.values()])].flatMap((take) =>
    take.clock.faults.filter(({ channel }) =>
      channel === null ? take === base : chosen.get(channel) === take,
    ),
  );
  return { ...base.clock, faults };
}

/** Clipped speakers that are still in use, the loudest peak and the highest noise floor. */
function joinCaptures(
  readings: readonly Readings[],
  chosen: ReadonlyMap<ChannelLabel, Readings>,
): CaptureReading {
  const [loudest] = readings.toSorted((a, b) => b.capture.noiseFloorDb - a.capture.noiseFloorDb);
  return {
    clipped: [...chosen].flatMap(([label, { capture }]) =>
      capture.clipped.includes(label) ? [label] : [],
    ),
    noiseFloorDb: loudest?.capture.noiseFloorDb ?? 0,
    ...(loudest?.capture.noise ? { noise: loudest.capture.noise } : {}),
    peakDb: Math.max(...readings.map(({ capture }) => capture.peakDb)),
  };
}
