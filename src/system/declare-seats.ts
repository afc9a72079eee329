import { plainLengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { DeclaredRoom, DeclaredSeat, DeclaredSystem } from './declared-system';
import { metresOutside, refuseRoom } from './room-outline';

const seatWidthMetres = 0.3;
const farthestMetres = 30;
const mostSeats = 20;
const longestName = 40;

/** What was declared, with another outline of the room or none; a trouble when it makes no sense. */
export function setRoom(
  system: DeclaredSystem,
  room: DeclaredRoom | null,
): DeclaredSystem | Trouble {
  const refusal = room && refuseRoom(room);
  return refusal ? trouble('bad-number', refusal) : { ...system, room };
}

/** What was declared, with one more seat; a trouble says why there can be none. */
export function addSeat(system: DeclaredSystem, seat: DeclaredSeat): DeclaredSystem | Trouble {
  if (system.seats.length >= mostSeats) {
    return trouble(
      'bad-number',
      msg(str`A plan holds up to ${mostSeats} seats beside the main one.`),
    );
  }
  return withSeat(system, seat, system.seats.length);
}

/** What was declared, with the seat of an index, from 0, as given. */
export function changeSeat(
  system: DeclaredSystem,
  index: number,
  seat: DeclaredSeat,
): DeclaredSystem | Trouble {
  if (!system.seats[index]) throw new RangeError(`there is no seat ${index}`);
  return withSeat(system, seat, index);
}

/** What was declared, without the seat of an index, from 0. */
export function removeSeat(system: DeclaredSystem, index: number): DeclaredSystem {
  return { ...system, seats: system.seats.filter((_, one) => one !== index) };
}

/** A seat that can be added: the next name and the nearest free place to the right, then left. */
export function nextSeat(system: DeclaredSystem): DeclaredSeat | null {
  const count = system.seats.length;
  for (let number = 2; number < count + 4; number++) {
    const name = msg(str`Seat ${number}`);
    for (let place = 0; place < 4 * (count + 2); place++) {
      const [row, turn] = [Math.floor(place / 4), place % 4];
      const seat = {
        name,
        rightMetres: (turn % 2 === 0 ? 0.6 : -0.6) * (1 + row),
        backMetres: turn < 2 ? 0 : 1,
      };
      if (refuseSeat(system, seat, count) === null) return seat;
    }
  }
  return null;
}

function withSeat(
  system: DeclaredSystem,
  seat: DeclaredSeat,
  index: number,
): DeclaredSystem | Trouble {
  const tidy = { ...seat, name: seat.name.trim() };
  const refusal = refuseSeat(system, tidy, index);
  if (refusal !== null) return trouble('bad-number', refusal);
  const seats = [...system.seats];
  seats[index] = tidy;
  return { ...system, seats };
}

function refuseSeat(system: DeclaredSystem, seat: DeclaredSeat, index: number): string | null {
  const { name, rightMetres, backMetres } = seat;
  if (name === '') return msg('A seat has a name.');
  if (name.length > longestName) return msg(str`A seat’s name has up to ${longestName} letters.`);
  if (!Number.isFinite(rightMetres) || !Number.isFinite(backMetres)) {
    return msg(str`The place of ${name} is no number.`);
  }
  const metres = Math.hypot(rightMetres, backMetres);
  if (metres < seatWidthMetres) {
    return msg(
      str`${name} would stand on the main seat: seats stand at least ${plainLengthText(seatWidthMetres)} apart.`,
    );
  }
  if (metres > farthestMetres) {
    return msg(
      str`${name} would stand more than ${plainLengthText(farthestMetres)} from the main seat.`,
    );
  }
  for (const [other, one] of system.seats.entries()) {
    if (other === index) continue;
    if (one.name === name) return msg(str`There is a seat called ${name} already.`);
    const between = Math.hypot(one.rightMetres - rightMetres, one.backMetres - backMetres);
    if (between < seatWidthMetres) {
      return msg(
        str`${name} would stand on ${one.name}: seats stand at least ${plainLengthText(seatWidthMetres)} apart.`,
      );
    }
  }
  const outside =
    system.room && metresOutside(system.room, { rightMetres, backMetres, upMetres: 0 });
  return outside ? msg(str`${name} would stand outside the room.`) : null;
}
