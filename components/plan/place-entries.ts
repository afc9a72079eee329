import { msg } from '@lit/localize';
import type { Channel } from '../../src/system/channel';
import type { DeclaredSystem } from '../../src/system/declared-system';
import { moveSpeaker, moveSpeakerTo } from '../../src/system/move-speaker';
import { standingOffset, standingPlace, type DeclaredPlan } from '../../src/system/standing-place';
import type { Trouble } from '../../src/trouble';

/** One number of a place to type, and what declares it. */
export interface PlaceEntry {
  readonly label: string;
  readonly unit: string;
  readonly value: number | null;
  readonly min: number;
  readonly max: number;
  readonly hint: string;
  readonly enter: (value: number) => DeclaredSystem | Trouble;
}

/** A place by angle and distance; a sub's elevation is not asked for. */
export function angleEntries(plan: DeclaredPlan, { label, kind }: Channel): PlaceEntry[] {
  const place = standingPlace(plan, label);
  const angle: PlaceEntry = {
    label: msg('Angle'),
    unit: '°',
    value: place.azimuthDegrees,
    min: -180,
    max: 180,
    hint: msg('0 is ahead, plus to the left, minus to the right.'),
    enter: (azimuthDegrees) => moveSpeaker(plan, label, { ...place, azimuthDegrees }),
  };
  const elevation: PlaceEntry = {
    label: msg('Elevation'),
    unit: '°',
    value: place.elevationDegrees,
    min: -90,
    max: 90,
    hint: msg('0 is ear height, 90 straight above the seat.'),
    enter: (elevationDegrees) => moveSpeaker(plan, label, { ...place, elevationDegrees }),
  };
  const distance: PlaceEntry = {
    label: msg('Distance'),
    unit: 'm',
    value: place.distanceMetres,
    min: -Infinity,
    max: Infinity,
    hint:
      place.distanceMetres === null
        ? msg('Not known; drawn at the reference distance.')
        : msg('Straight from the ears at the seat.'),
    enter: (distanceMetres) => moveSpeaker(plan, label, { ...place, distanceMetres }),
  };
  return kind === 'sub' ? [angle, distance] : [angle, elevation, distance];
}

/** A place by metres from the seat. */
export function metreEntries(plan: DeclaredPlan, { label }: Channel): PlaceEntry[] {
  const place = standingPlace(plan, label);
  const offset = standingOffset(plan, label, place);
  const rounded = (value: number): number => Number(value.toFixed(3)) + 0;
  const known = place.distanceMetres === null ? msg('Not known; as it is drawn.') : '';
  const entry = (name: string, key: keyof typeof offset, hint: string): PlaceEntry => ({
    label: name,
    unit: 'm',
    value: rounded(offset[key]),
    min: -Infinity,
    max: Infinity,
    hint: known || hint,
    enter: (value) => moveSpeakerTo(plan, label, { ...offset, [key]: value }),
  });
  return [
    entry(msg('To the right'), 'rightMetres', msg('Minus is to the left.')),
    entry(msg('Behind'), 'backMetres', msg('Minus is ahead.')),
    entry(msg('Above the ears'), 'upMetres', msg('Minus is below.')),
  ];
}
