import type { Channel, Layout } from '../system/channel';
import type { DeclaredSettings } from '../system/declared-settings';
import type { DeclaredSystem } from '../system/declared-system';
import { offsetOf } from '../system/speaker-offset';
import type { DirectSpeaker, GeometryFinding } from './geometry-finding';
import type { PlacedDistance } from './geometry-fit';
import { findOffTyped, findUnequalPairs } from './geometry-pairs';
import { findOffPlan } from './geometry-plan';
import type { Readings } from './reading';

/**
 * Holds measured distances of direct speakers (no subs, nothing bounced) against the declared plan,
 * or where it has none, the distances typed into the processor: whether they fit one seat, which
 * speaker does not, and how left and right compare. Only differences beside the other speakers
 * count, because the tape distance of one speaker moves all. Findings first, notes after them.
 */
export function checkGeometry(
  readings: Readings,
  layout: Layout,
  system: DeclaredSystem,
  inForce: DeclaredSettings,
): GeometryFinding[] {
  const direct = layout.channels.flatMap((channel) => directSpeaker(channel, readings, system));
  const placed = direct.flatMap((one) => placeOn(one, system, inForce));
  const findings = [
    ...findOffPlan(placed, readings),
    ...findOffTyped(direct, system, inForce),
    ...findUnequalPairs(direct),
  ];
  return findings.toSorted((a, b) => Number(b.wantsAction) - Number(a.wantsAction));
}

function directSpeaker(
  channel: Channel,
  { channels }: Readings,
  { bounced }: DeclaredSystem,
): DirectSpeaker[] {
  const reading = channels.find((one) => one.channel === channel.label);
  const metres = reading?.distanceMetres ?? null;
  if (!reading || metres === null || reading.faults.length > 0) return [];
  if (channel.kind === 'sub' || bounced.includes(channel.label)) return [];
  return reading.ceilingPathMetres === null ? [{ channel, reading, metres }] : [];
}

/** A speaker in its place; one whose distance was declared nowhere has none. */
function placeOn(
  { channel, metres }: DirectSpeaker,
  { places }: DeclaredSystem,
  inForce: DeclaredSettings,
): PlacedDistance[] {
  const { label, azimuthDegrees, elevationDegrees } = channel;
  const declared = places[label]?.distanceMetres ?? inForce.distanceMetres[label] ?? null;
  if (declared === null) return [];
  const offset = offsetOf({ azimuthDegrees, elevationDegrees, distanceMetres: declared });
  return [{ channel: label, offset, metres }];
}
