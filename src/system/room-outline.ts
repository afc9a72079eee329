import { plainLengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import type { DeclaredRoom } from './declared-system';
import type { SpeakerOffset } from './speaker-offset';

/** A tape measures a wall no better than this, metres; common practice, no source. */
const wallSlackMetres = 0.05;

/** Where the walls stand seen from the main seat, metres; all are positive. */
export interface Walls {
  readonly aheadMetres: number;
  readonly behindMetres: number;
  readonly leftMetres: number;
  readonly rightMetres: number;
  readonly aboveMetres: number;
  readonly belowMetres: number;
}

/** The walls, the ceiling and the floor seen from the ears at the main seat. */
export function wallsOf(room: DeclaredRoom): Walls {
  return {
    aheadMetres: room.seatFromFrontMetres,
    behindMetres: room.lengthMetres - room.seatFromFrontMetres,
    leftMetres: room.seatFromLeftMetres,
    rightMetres: room.widthMetres - room.seatFromLeftMetres,
    aboveMetres: room.heightMetres - room.earHeightMetres,
    belowMetres: room.earHeightMetres,
  };
}

/** How far a place stands outside the room, metres; 0 inside and within a tape's error. */
export function metresOutside(room: DeclaredRoom, offset: SpeakerOffset): number {
  const walls = wallsOf(room);
  const beyond = Math.max(
    -offset.backMetres - walls.aheadMetres,
    offset.backMetres - walls.behindMetres,
    -offset.rightMetres - walls.leftMetres,
    offset.rightMetres - walls.rightMetres,
    offset.upMetres - walls.aboveMetres,
    -offset.upMetres - walls.belowMetres,
  );
  return beyond > wallSlackMetres ? beyond : 0;
}

/** Largest share, 0 to 1, of an offset that stays inside the room. */
export function shareInside(room: DeclaredRoom, offset: SpeakerOffset): number {
  const walls = wallsOf(room);
  const share = (metres: number, ahead: number, behind: number): number =>
    metres === 0 ? 1 : (metres < 0 ? ahead : behind) / Math.abs(metres);
  return Math.min(
    1,
    share(offset.backMetres, walls.aheadMetres, walls.behindMetres),
    share(offset.rightMetres, walls.leftMetres, walls.rightMetres),
    share(offset.upMetres, walls.belowMetres, walls.aboveMetres),
  );
}

const sizes = () =>
  [
    [msg('length'), 'lengthMetres', 1, 60],
    [msg('width'), 'widthMetres', 1, 60],
    [msg('height'), 'heightMetres', 1.5, 20],
  ] as const;

const seats = () =>
  [
    [
      msg('distance of the seat from the front wall'),
      'seatFromFrontMetres',
      'lengthMetres',
      msg('length'),
    ],
    [
      msg('distance of the seat from the left wall'),
      'seatFromLeftMetres',
      'widthMetres',
      msg('width'),
    ],
    [msg('height of the ears'), 'earHeightMetres', 'heightMetres', msg('height')],
  ] as const;

/** What is wrong with the numbers of a room, each in a sentence; empty when it makes sense. */
export type RoomFaults = Readonly<Partial<Record<keyof DeclaredRoom, string>>>;

/**
 * What is wrong with a room, number by number, metres. The seat is held against a side only where
 * that side makes sense itself. Limits are common sense.
 */
export function faultsOfRoom(room: DeclaredRoom): RoomFaults {
  const faults: Partial<Record<keyof DeclaredRoom, string>> = {};
  for (const [name, key, least, most] of sizes()) {
    const value = room[key];
    if (!Number.isFinite(value)) faults[key] = msg(str`The ${name} of the room is no number.`);
    else if (value < least || value > most) {
      faults[key] = msg(
        str`The ${name} of the room lies between ${plainLengthText(least)} and ${plainLengthText(most)}, not ${plainLengthText(value)}.`,
      );
    }
  }
  for (const [name, key, within, side] of seats()) {
    const value = room[key];
    if (!Number.isFinite(value)) faults[key] = msg(str`The ${name} is no number.`);
    else if (faults[within] === undefined && (value <= 0 || value >= room[within])) {
      faults[key] = msg(
        str`The ${name} lies between 0 and the room’s ${side} of ${plainLengthText(room[within])}, not ${plainLengthText(value)}.`,
      );
    }
  }
  return faults;
}

/** Why a room makes no sense, in its first sentence; null when it does. */
export function refuseRoom(room: DeclaredRoom): string | null {
  return Object.values(faultsOfRoom(room))[0] ?? null;
}
