import { speedOfSound } from '../../dsp/level/speed-of-sound';
import { median } from '../../dsp/signal/median';
import { fitSeat, misfit, type PlacedDistance, type SeatFit } from '../reading/geometry-fit';
import type { ChannelLabel } from '../system/channel';
import type { DeclaredSystem } from '../system/declared-system';
import { offsetOf } from '../system/speaker-offset';
import { bassChange } from './bass-change';
import type { ChangeLimits } from './judge-change';
import type { PairedPosition, PairedSpeaker } from './pair-positions';

/** How much farther a speaker is than then, beside the others, metres. */
export interface DistanceChange {
  readonly metres: number;
  /** Both intervals together: half width. */
  readonly half: number;
}

/** What the distances of a position say. */
export interface Moves {
  /**
   * `speakers`: most stand as they stood. `microphone`: it stands elsewhere, and the changes are
   * what that leaves. `unexplained`: neither fits, so that no speaker can be blamed.
   */
  readonly kind: 'speakers' | 'microphone' | 'unexplained';
  /** How far the microphone moved, metres; null where it did not or that cannot be told. */
  readonly microphone: { readonly rightMetres: number; readonly backMetres: number } | null;
  readonly changes: ReadonlyMap<ChannelLabel, DistanceChange>;
  /** How far the microphone may stand from where it stood, for what that makes unsure, metres. */
  readonly movedMetres: number;
}

/** Put back by hand, a microphone stands within this of its place, m; common practice. */
export const mainLimits: ChangeLimits = { allowed: 0.05, coarsest: 0.1 };
/** A sub's time is its phase in the bass. */
export const subLimits: ChangeLimits = { allowed: 0.15, coarsest: 0.3 };
/** Distances differ by the tape of the reference as well: three unknowns and two more to check. */
const leastForSeat = 5;
const leastForSeatWithoutOne = 6;
const mostUnsureMetres = 0.3;

interface Row {
  readonly speaker: PairedSpeaker;
  /** Relative to the reference's own distance, now less then. */
  readonly metres: number;
  readonly half: number;
}

/**
 * Holds the distances of a position against those of then. Only differences between speakers count,
 * because the tape distance of one moves all. Speakers that stand out are said to have moved; where
 * many differ, it is asked whether one other place of the microphone explains them.
 */
export function findMoves(pair: PairedPosition, system: DeclaredSystem): Moves {
  const rows = pair.speakers.flatMap((speaker) => mainRow(pair, speaker));
  const plain = besideMiddle(rows);
  const off = rows.filter((row) => isOff(row, plain));
  const isFew = off.length === 0 || (off.length === 1 && rows.length >= 3);
  const seat = isFew ? null : seatThatExplains(pair, rows, system);
  const isMost = 2 * off.length < rows.length && rows.length >= 3;
  const kind = seat ? 'microphone' : isFew || isMost ? 'speakers' : 'unexplained';
  const { common, changes } = seat ?? middleOf(rows, off);
  const spread = rows.map(({ metres }) => Math.abs(metres - common));
  return {
    kind,
    microphone: seat && { rightMetres: seat.rightMetres, backMetres: seat.backMetres },
    changes: new Map([...changes, ...(seat ? [] : subChanges(pair, common))]),
    movedMetres: seat
      ? Math.hypot(seat.rightMetres, seat.backMetres)
      : Math.min(mostUnsureMetres, median(spread)),
  };
}

function mainRow({ now, before }: PairedPosition, speaker: PairedSpeaker): Row[] {
  const { channel, now: is, before: was } = speaker;
  if (channel.kind === 'sub' || is.distanceMetres === null || was.distanceMetres === null)
    return [];
  const metres =
    is.distanceMetres -
    now.referenceDistanceMetres -
    (was.distanceMetres - before.referenceDistanceMetres);
  const half = [is, was].reduce((sum, { distanceInterval }) => sum + halfOf(distanceInterval), 0);
  return [{ speaker, metres, half }];
}

function halfOf(interval: readonly [number, number] | null): number {
  return interval ? (interval[1] - interval[0]) / 2 : mainLimits.coarsest;
}

function besideMiddle(rows: readonly Row[]): number {
  return median(rows.map(({ metres }) => metres));
}

function isOff({ metres, half }: Row, common: number): boolean {
  return Math.abs(metres - common) - half > mainLimits.allowed;
}

/** The changes beside the middle of the speakers that did not move. */
function middleOf(rows: readonly Row[], off: readonly Row[]) {
  const still = rows.filter((row) => !off.includes(row));
  const common = besideMiddle(still.length > 0 ? still : rows);
  return { common, changes: rows.map((row) => changeOf(row, row.metres - common)) };
}

function changeOf({ speaker, half }: Row, metres: number): [ChannelLabel, DistanceChange] {
  return [speaker.channel.label, { metres, half }];
}

/** Another place of the microphone that leaves at most one speaker unexplained; null for none. */
function seatThatExplains(
  { position }: PairedPosition,
  rows: readonly Row[],
  { bounced, seats }: DeclaredSystem,
) {
  // The directions of the plan are those from the main seat.
  if (position.kind !== 'seat' || seats.some(({ name }) => name === position.name)) return null;
  const direct = rows.filter(
    ({ speaker: { channel, now, before } }) =>
      !bounced.includes(channel.label) &&
      now.ceilingPathMetres === null &&
      before.ceilingPathMetres === null,
  );
  if (direct.length < leastForSeat) return null;
  const whole = explain(direct);
  if (whole) return withAll(rows, whole);
  if (direct.length < leastForSeatWithoutOne) return null;
  const [best] = direct
    .flatMap((left) => explain(direct.filter((row) => row !== left)) ?? [])
    .sort((a, b) => a.worst - b.worst);
  return best ? withAll(rows, best) : null;
}

interface Explained extends SeatFit {
  /** By how much the worst lies outside its interval, metres. */
  readonly worst: number;
}

/** A fit to speakers; null unless it explains all of them. */
function explain(rows: readonly Row[]): Explained | null {
  const fit = fitSeat(rows.map(placed));
  if (!fit) return null;
  const over = rows.map(({ half }, at) => Math.abs(fit.residuals[at] ?? Infinity) - half);
  const worst = Math.max(...over);
  return worst > mainLimits.allowed ? null : { ...fit, worst };
}

function withAll(rows: readonly Row[], fit: Explained) {
  const changes = rows.map((row) => changeOf(row, misfit(fit, placed(row))));
  return { ...fit, common: fit.commonMetres, changes };
}

/** A speaker in the direction of the plan at the distance it had, and how far it seems to be now. */
function placed({ speaker: { channel, before }, metres }: Row): PlacedDistance {
  const { label, azimuthDegrees, elevationDegrees } = channel;
  const distanceMetres = before.distanceMetres ?? 0;
  const offset = offsetOf({ azimuthDegrees, elevationDegrees, distanceMetres });
  return { channel: label, offset, metres: distanceMetres + metres };
}

/** Subs by their phase in the bass, beside the same middle. */
function subChanges(pair: PairedPosition, common: number): [ChannelLabel, DistanceChange][] {
  const speed = speedOfSound(pair.now.temperatureCelsius);
  return pair.speakers.flatMap((speaker): [ChannelLabel, DistanceChange][] => {
    const fit = speaker.channel.kind === 'sub' ? bassChange(speaker) : null;
    if (!fit) return [];
    const metres = speed * fit.delaySeconds - common;
    return [[speaker.channel.label, { metres, half: speed * fit.halfSeconds }]];
  });
}
