import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { ChannelLabel } from './channel';
import type { DeclaredPlace, DeclaredSystem } from './declared-system';
import { partnerOf } from './partner-label';
import { refusePlace } from './refuse-place';
import { placeOf, type SpeakerOffset } from './speaker-offset';
import { channelOf, standingPlace, type DeclaredPlan } from './standing-place';

/** What was declared, with a speaker at a place; a trouble says why it cannot stand there. */
export function moveSpeaker(
  plan: DeclaredPlan,
  label: ChannelLabel,
  place: DeclaredPlace,
): DeclaredSystem | Trouble {
  const refusal = refusePlace(plan, label, place);
  if (refusal !== null) return trouble('bad-number', refusal);
  return { ...plan.system, places: { ...plan.system.places, [label]: tidy(place) } };
}

/** The same by metres from the seat. */
export function moveSpeakerTo(
  plan: DeclaredPlan,
  label: ChannelLabel,
  offset: SpeakerOffset,
): DeclaredSystem | Trouble {
  const numbers = [offset.rightMetres, offset.backMetres, offset.upMetres];
  if (!numbers.every(Number.isFinite)) {
    return trouble('bad-number', msg(str`The place of ${label} is no number.`));
  }
  return moveSpeaker(plan, label, placeOf(offset));
}

/** The partner of a pair mirrored to where this speaker stands. A centre or a sub has none. */
export function mirrorSpeaker(plan: DeclaredPlan, label: ChannelLabel): DeclaredSystem | Trouble {
  const partner = partnerOf(label);
  if (partner === label) throw new RangeError(`${label} has no partner to mirror`);
  const place = standingPlace(plan, label);
  return moveSpeaker(plan, partner, { ...place, azimuthDegrees: 0 - place.azimuthDegrees });
}

/** What was declared, with a speaker back where the layout has it. */
export function forgetPlace(system: DeclaredSystem, label: ChannelLabel): DeclaredSystem {
  const places = Object.entries(system.places).filter(([one]) => one !== label);
  return { ...system, places: Object.fromEntries(places) };
}

/**
 * What was declared, with a pair of heights bounced off the ceiling, or aimed down. Throws
 * RangeError for a speaker that is no height.
 */
export function setBounced(
  { layout, system }: DeclaredPlan,
  label: ChannelLabel,
  bounced: boolean,
): DeclaredSystem {
  if (channelOf(layout, label).kind !== 'height') throw new RangeError(`${label} is no height`);
  const pair = [label, partnerOf(label)];
  const others = system.bounced.filter((one) => !pair.includes(one));
  const inOrder = layout.channels.map((one) => one.label).filter((one) => pair.includes(one));
  return { ...system, bounced: bounced ? [...others, ...inOrder] : others };
}

/** Four decimals: finer than any tape, and enough that metres come back as they were typed. */
function tidy({ azimuthDegrees, elevationDegrees, distanceMetres }: DeclaredPlace): DeclaredPlace {
  const rounded = (value: number): number => Number(value.toFixed(4)) + 0;
  return {
    azimuthDegrees: rounded(azimuthDegrees),
    elevationDegrees: rounded(elevationDegrees),
    distanceMetres: distanceMetres === null ? null : rounded(distanceMetres),
  };
}
