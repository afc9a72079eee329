import { plainLengthText } from '../locale/length-text';
import { trimmedText } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { ChannelLabel } from './channel';
import type { DeclaredPlace } from './declared-system';
import { metresOutside } from './room-outline';
import { metresBetween } from './speaker-offset';
import { channelOf, standingOffset, standingPlace, type DeclaredPlan } from './standing-place';

/** Nearer a speaker stands at the seat; two speakers nearer to each other stand in one spot. */
export const atSeatMetres = 0.3;
export const oneSpotMetres = 0.15;
/** Farther than any room this is made for. */
export const farthestMetres = 50;

/**
 * Why a speaker cannot stand at a place, in a sentence; null when it can. Speakers of unknown
 * distance are taken to stand where they are drawn. Limits are common sense, no source.
 */
export function refusePlace(
  plan: DeclaredPlan,
  label: ChannelLabel,
  place: DeclaredPlace,
): string | null {
  return (
    refuseDirection(label, place) ??
    refuseDistance(label, place.distanceMetres) ??
    refuseSpot(plan, label, place) ??
    refuseWall(plan, label, place)
  );
}

function refuseDirection(label: ChannelLabel, place: DeclaredPlace): string | null {
  const { azimuthDegrees, elevationDegrees } = place;
  if (!Number.isFinite(azimuthDegrees)) return msg(str`The angle of ${label} is no number.`);
  if (Math.abs(azimuthDegrees) > 180) {
    return msg(
      str`The angle of ${label} lies between −180° and 180°, not at ${figure(azimuthDegrees)}°: 0° is ahead, ±180° straight behind.`,
    );
  }
  if (!Number.isFinite(elevationDegrees)) return msg(str`The elevation of ${label} is no number.`);
  if (Math.abs(elevationDegrees) > 90) {
    return msg(
      str`The elevation of ${label} lies between −90° and 90°, not at ${figure(elevationDegrees)}°: 90° is straight above the seat.`,
    );
  }
  return null;
}

function refuseDistance(label: ChannelLabel, metres: number | null): string | null {
  if (metres === null) return null;
  if (!Number.isFinite(metres)) return msg(str`The distance of ${label} is no number.`);
  if (metres <= 0)
    return msg(str`The distance of ${label} is more than zero, not ${plainLengthText(metres)}.`);
  if (metres < atSeatMetres) {
    return msg(
      str`${label} would stand at the seat, ${plainLengthText(metres)} away: no speaker stands nearer than ${plainLengthText(atSeatMetres)}.`,
    );
  }
  return metres > farthestMetres
    ? msg(
        str`${label} would stand ${plainLengthText(metres)} away: no speaker stands farther than ${plainLengthText(farthestMetres)}.`,
      )
    : null;
}

/**
 * The first speaker that a place is in one spot with, and how far off it is, metres; null when
 * there is none. A sub on the floor may well stand under a speaker: subs are held against subs.
 */
export function sharesSpot(
  plan: DeclaredPlan,
  label: ChannelLabel,
  place: DeclaredPlace,
): { readonly other: ChannelLabel; readonly metres: number } | null {
  const isSub = channelOf(plan.layout, label).kind === 'sub';
  const here = standingOffset(plan, label, place);
  for (const { label: other, kind } of plan.layout.channels) {
    if (other === label || (kind === 'sub') !== isSub) continue;
    const there = standingOffset(plan, other, standingPlace(plan, other));
    const metres = metresBetween(here, there);
    if (metres < oneSpotMetres) return { other, metres };
  }
  return null;
}

function refuseSpot(plan: DeclaredPlan, label: ChannelLabel, place: DeclaredPlace): string | null {
  const shared = sharesSpot(plan, label, place);
  if (!shared) return null;
  return msg(
    str`${label} and ${shared.other} would stand in one spot, ${plainLengthText(shared.metres)} apart: two speakers stand at least ${plainLengthText(oneSpotMetres)} apart.`,
  );
}

function refuseWall(plan: DeclaredPlan, label: ChannelLabel, place: DeclaredPlace): string | null {
  const { room } = plan.system;
  if (!room || place.distanceMetres === null) return null;
  const metres = metresOutside(room, standingOffset(plan, label, place));
  return metres === 0
    ? null
    : msg(
        str`${label} would stand ${plainLengthText(metres)} outside the room: move it inside, or change the room’s outline first.`,
      );
}

/** A number as a person reads it, with two decimals at most. */
function figure(value: number): string {
  return trimmedText(value, 2);
}
