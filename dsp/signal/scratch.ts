/** Gives an array of a length. */
export type Room = (length: number) => Float64Array;

/** New arrays of zeros. */
export const newRoom: Room = (length) => new Float64Array(length);

/**
 * Room that is used again: each call gives the same memory, grown where it must be, with whatever
 * the last use left in it. For arrays that live no longer than what asks for them; new ones of a
 * megabyte cost more than the work done in them.
 */
export function scratch(): Room {
  let room = new Float64Array(0);
  let last = room;
  return (length) => {
    if (room.length < length) room = new Float64Array(length);
    if (last.length !== length) last = room.subarray(0, length);
    return last;
  };
}
