import { lengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import type { Channel, ChannelLabel } from './channel';
import { layoutFromName, referenceChannel } from './layout';
import { partnerOf } from './partner-label';
import { isTrouble } from '../trouble';
import { listInWords } from './list-in-words';
import { sharesSpot } from './refuse-place';
import { metresOutside } from './room-outline';
import { standingOffset, standingPlace, type DeclaredPlan } from './standing-place';
import { apparentElevation } from './bounced-height';

/** Something worth knowing of where speakers stand; it forbids nothing. */
export interface PlaceNote {
  readonly kind: 'range' | 'unequal' | 'role' | 'room' | 'spot' | 'tape';
  readonly labels: readonly ChannelLabel[];
  readonly sentence: string;
}

/** Where the standard gives one angle and no range, and for pairs: said from here on, degrees. */
const saidFromDegrees = 5;

/** No protractor in a room tells a degree; common practice, no source. */
const slackDegrees = 1;

/** A declared and a taped distance of one speaker agree to this, metres; common practice. */
const tapeMetres = 0.05;

/**
 * Gentle notes on a plan, in layout order: outside the ranges of ITU-R BS.2051 (and of BS.775 for
 * five at ear height), unequal pairs, side surrounds that stand behind, speakers outside the room or
 * in one spot, a reference distance that was taped otherwise.
 * That one degree off counts from 5 on is common practice, no source.
 */
export function notePlaces(plan: DeclaredPlan): PlaceNote[] {
  const { channels } = plan.layout;
  return [
    ...channels.flatMap((channel) => noteRange(plan, channel)),
    ...channels.flatMap((channel) => noteUnequal(plan, channel)),
    ...noteSides(plan),
    ...channels.flatMap((channel) => noteRoom(plan, channel)),
    ...channels.flatMap((channel, index) => noteSpot(plan, channel, index)),
    ...noteTape(plan),
  ];
}

/** The angles that the standard has for a speaker at its nominal place, in words; null for subs. */
export function rangeInWords(nominal: Channel): string | null {
  if (nominal.kind === 'sub') return null;
  if (nominal.kind === 'bed' && !nominal.elevationRange) return azimuthSpan(nominal);
  return `${azimuthSpan(nominal)}, ${elevationSpan(nominal)}`;
}

/**
 * Who gives a speaker its range, with the verb: BS.775 as well for up to five at ear height (from
 * memory; its angles there are those of BS.2051).
 */
export function standardsHave({ layout }: DeclaredPlan, { kind }: Channel): string {
  const isWider = layout.channels.some(({ group }) => group === 'backs' || group === 'wides');
  return kind === 'bed' && !isWider ? msg('BS.775 and BS.2051 have') : msg('BS.2051 has');
}

/** A speaker where the layout has it, whatever was declared. */
export function nominalChannel({ layout }: DeclaredPlan, label: ChannelLabel): Channel | null {
  const nominal = layoutFromName(layout.name);
  if (isTrouble(nominal)) return null;
  return nominal.channels.find((channel) => channel.label === label) ?? null;
}

function noteRange(plan: DeclaredPlan, channel: Channel): PlaceNote[] {
  const nominal = nominalChannel(plan, channel.label);
  if (!nominal || channel.kind === 'sub') return [];
  const standards = standardsHave(plan, channel);
  const notes: PlaceNote[] = [];
  const say = (sentence: string): void => {
    notes.push({ kind: 'range', labels: [channel.label], sentence });
  };
  const { label, azimuthDegrees } = channel;
  if (isOutside(azimuthDegrees, nominal.azimuthRange, nominal.azimuthDegrees)) {
    say(
      msg(
        str`${label} stands ${angleInWords(azimuthDegrees)}; ${standards} ${azimuthSpan(nominal)}.`,
      ),
    );
  }
  const elevation = apparentElevation(plan, label);
  if (
    elevation !== null &&
    isOutside(elevation, nominal.elevationRange, nominal.elevationDegrees)
  ) {
    const how = plan.system.bounced.includes(label) ? msg('sounds from') : 'stands';
    say(
      msg(
        str`${label} ${how} ${Math.round(elevation)}° up; ${standards} ${elevationSpan(nominal)}.`,
      ),
    );
  }
  return notes;
}

function isOutside(
  degrees: number,
  range: readonly [number, number] | null,
  nominal: number,
): boolean {
  if (range) return degrees < range[0] - slackDegrees || degrees > range[1] + slackDegrees;
  return Math.abs(degrees - nominal) > saidFromDegrees;
}

function noteUnequal(plan: DeclaredPlan, left: Channel): PlaceNote[] {
  const partner = plan.layout.channels.find(({ label }) => label === partnerOf(left.label));
  if (!partner || partner.label === left.label || left.label.match(/Rw?$/)) return [];
  const apart = Math.abs(left.azimuthDegrees + partner.azimuthDegrees);
  if (apart <= saidFromDegrees) return [];
  const sentence = msg(
    str`${left.label} stands ${angleInWords(left.azimuthDegrees)} and ${partner.label} ${angleInWords(partner.azimuthDegrees)}: what should sound between them leans to one side, and no distance or level mends that.`,
  );
  return [{ kind: 'unequal', labels: [left.label, partner.label], sentence }];
}

/** A lone pair of surrounds is the side pair; said once it stands behind its range. */
function noteSides({ layout }: DeclaredPlan): PlaceNote[] {
  if (layout.channels.some(({ group }) => group === 'backs')) return [];
  const behind = layout.channels.filter(
    ({ group, azimuthDegrees }) => group === 'sides' && Math.abs(azimuthDegrees) > 120,
  );
  if (behind.length === 0) return [];
  const labels = behind.map(({ label }) => label);
  const role =
    labels.length === 1
      ? msg('stands behind the seat and is a side surround')
      : msg('stand behind the seat and are the side surrounds');
  const sentence = msg(
    str`${listInWords(labels)} ${role} all the same: a lone pair of surrounds is the side pair, and goes to the side outputs.`,
  );
  return [{ kind: 'role', labels, sentence }];
}

function noteRoom(plan: DeclaredPlan, { label }: Channel): PlaceNote[] {
  const place = standingPlace(plan, label);
  if (!plan.system.room || place.distanceMetres === null) return [];
  const metres = metresOutside(plan.system.room, standingOffset(plan, label, place));
  if (metres === 0) return [];
  const sentence = msg(
    str`${label} is declared ${lengthText(metres)} outside the room: either its place or the outline is not right.`,
  );
  return [{ kind: 'room', labels: [label], sentence }];
}

/** Each two in one spot are said once, at the first: such as after another pair was declared. */
function noteSpot(plan: DeclaredPlan, { label }: Channel, index: number): PlaceNote[] {
  const shared = sharesSpot(plan, label, standingPlace(plan, label));
  if (!shared) return [];
  const other = plan.layout.channels.findIndex((one) => one.label === shared.other);
  if (other < index) return [];
  const sentence = msg(
    str`${label} and ${shared.other} are declared in one spot: one of them is to be moved.`,
  );
  return [{ kind: 'spot', labels: [label, shared.other], sentence }];
}

/** The tape distance of the reference speaker is asked for elsewhere as well. */
function noteTape(plan: DeclaredPlan): PlaceNote[] {
  const label = referenceChannel(plan.layout);
  const metres = plan.system.places[label]?.distanceMetres ?? null;
  if (metres === null || Math.abs(metres - plan.nominalMetres) <= tapeMetres) return [];
  const sentence = msg(
    str`${label} is declared ${lengthText(metres)} away and its tape distance says ${lengthText(plan.nominalMetres)}: one of them is not right.`,
  );
  return [{ kind: 'tape', labels: [label], sentence }];
}

function azimuthSpan({ azimuthRange: range, azimuthDegrees }: Channel): string {
  if (!range) return angleInWords(azimuthDegrees);
  return withSide(`${spread(range)}°`, range[0] + range[1]);
}

function elevationSpan({ elevationRange: range, elevationDegrees }: Channel): string {
  if (range) return msg(str`${spread(range)}° up`);
  return elevationDegrees === 0 ? msg('ear height') : msg(str`${elevationDegrees}° up`);
}

function spread(range: readonly [number, number]): string {
  const [near, far] = [...range].map(Math.abs).sort((a, b) => a - b);
  return msg(str`${near}° to ${far}`);
}

function withSide(angle: string, degrees: number): string {
  return degrees >= 0 ? msg(str`${angle} left`) : msg(str`${angle} right`);
}

function angleInWords(degrees: number): string {
  const whole = Math.round(degrees);
  if (whole === 0) return msg('straight ahead');
  return Math.abs(whole) === 180 ? msg('straight behind') : withSide(`${Math.abs(whole)}°`, whole);
}
