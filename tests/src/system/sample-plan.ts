import type { ChannelLabel, Layout } from '../../../src/system/channel';
import {
  nothingDeclared,
  placedLayout,
  type DeclaredRoom,
  type DeclaredSystem,
} from '../../../src/system/declared-system';
import { layoutFromName } from '../../../src/system/layout';
import type { DeclaredPlan } from '../../../src/system/standing-place';
import { isTrouble, type Trouble } from '../../../src/trouble';

/** An invented room: the seat 3.2 m from the front wall and 2 m from both side walls. */
export const room: DeclaredRoom = {
  lengthMetres: 5.5,
  widthMetres: 4,
  heightMetres: 2.4,
  seatFromFrontMetres: 3.2,
  seatFromLeftMetres: 2,
  earHeightMetres: 1.1,
};

export function layout(name: string): Layout {
  return known(layoutFromName(name));
}

/** A plan as the bench has it: the layout at its declared angles. */
export function plan(name: string, system: Partial<DeclaredSystem> = {}): DeclaredPlan {
  const declared = { ...nothingDeclared, ...system };
  return {
    layout: placedLayout(layout(name), declared),
    system: declared,
    nominalMetres: 2.4,
  };
}

/** Speakers at so many degrees and metres. */
export function places(
  entries: Partial<Record<ChannelLabel, readonly [number, number, number | null]>>,
): Pick<DeclaredSystem, 'places'> {
  const all = Object.entries(entries).map(
    ([label, [azimuthDegrees, elevationDegrees, distanceMetres]]) =>
      [label, { azimuthDegrees, elevationDegrees, distanceMetres }] as const,
  );
  return { places: Object.fromEntries(all) };
}

export function known<Value>(value: Value | Trouble): Value {
  if (isTrouble(value)) throw new Error(value.sentence);
  return value;
}

/** The sentence of a refusal. */
export function sentenceOf(value: unknown): string {
  if (!isTrouble(value)) throw new Error('not refused');
  return value.sentence;
}
