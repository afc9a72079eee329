import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addSeat,
  changeSeat,
  nextSeat,
  removeSeat,
  setRoom,
} from '../../../src/system/declare-seats';
import { nothingDeclared, type DeclaredSystem } from '../../../src/system/declared-system';
import { metresOutside, shareInside, wallsOf } from '../../../src/system/room-outline';
import { standingOffset, standingPlace } from '../../../src/system/standing-place';
import { known, plan, room, sentenceOf } from './sample-plan';

describe('the outline of the room', () => {
  it('is kept when it makes sense, and taken away again', () => {
    const drawn = known(setRoom(nothingDeclared, room));
    expect(drawn.room).toEqual(room);
    expect(known(setRoom(drawn, null))).toEqual(nothingDeclared);
  });

  it.each([
    [{ lengthMetres: -5 }, 'The length of the room lies between 1 m and 60 m, not −5 m'],
    [{ lengthMetres: 0 }, 'The length of the room'],
    [{ widthMetres: 400 }, 'The width of the room lies between 1 m and 60 m'],
    [{ heightMetres: 0.5 }, 'The height of the room lies between 1.5 m and 20 m'],
    [{ heightMetres: NaN }, 'The height of the room is no number'],
    [{ seatFromFrontMetres: 5.5 }, 'between 0 and the room’s length of 5.5 m'],
    [{ seatFromLeftMetres: 0 }, 'between 0 and the room’s width of 4 m'],
    [{ earHeightMetres: 2.5 }, 'between 0 and the room’s height of 2.4 m'],
    [{ earHeightMetres: Infinity }, 'The height of the ears is no number'],
  ])('is refused with %o: %s', (wrong, sentence) => {
    expect(sentenceOf(setRoom(nothingDeclared, { ...room, ...wrong }))).toContain(sentence);
  });

  it('stands around the seat', () => {
    const walls = wallsOf(room);
    expect(walls.aheadMetres).toBeCloseTo(3.2);
    expect(walls.behindMetres).toBeCloseTo(2.3);
    expect([walls.leftMetres, walls.rightMetres]).toEqual([2, 2]);
    expect(walls.aboveMetres).toBeCloseTo(1.3);
  });

  it('says how far outside a place is, and forgives a tape its 5 cm', () => {
    const at = (rightMetres: number, backMetres: number) =>
      metresOutside(room, { rightMetres, backMetres, upMetres: 0 });
    expect(at(2.04, 0)).toBe(0);
    expect(at(2.3, 0)).toBeCloseTo(0.3);
    expect(at(0, -3.7)).toBeCloseTo(0.5);
    expect(at(0, 2.6)).toBeCloseTo(0.3);
  });

  it('holds whatever is shortened to its share inside', () => {
    const metres = fc.double({ min: -9, max: 9, noNaN: true });
    fc.assert(
      fc.property(metres, metres, metres, (rightMetres, backMetres, upMetres) => {
        const share = shareInside(room, { rightMetres, backMetres, upMetres });
        const shortened = {
          rightMetres: rightMetres * share,
          backMetres: backMetres * share,
          upMetres: upMetres * share,
        };
        expect(share).toBeGreaterThan(0);
        expect(share).toBeLessThanOrEqual(1);
        expect(metresOutside(room, shortened)).toBe(0);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  it('keeps speakers of unknown distance inside', () => {
    const here = plan('9.4.6', { room: { ...room, widthMetres: 3, seatFromLeftMetres: 1 } });
    for (const { label } of here.layout.channels) {
      const offset = standingOffset(here, label, standingPlace(here, label));
      expect(here.system.room && metresOutside(here.system.room, offset)).toBe(0);
    }
  });
});

describe('other seats', () => {
  const seat = { name: 'Sofa left', rightMetres: -0.6, backMetres: 0 };
  const one = known(addSeat(nothingDeclared, seat));

  it('are added, moved and taken away', () => {
    expect(one.seats).toEqual([seat]);
    const moved = known(changeSeat(one, 0, { ...seat, backMetres: 0.9 }));
    expect(moved.seats).toEqual([{ ...seat, backMetres: 0.9 }]);
    expect(removeSeat(moved, 0)).toEqual(nothingDeclared);
    expect(() => changeSeat(one, 1, seat)).toThrow(RangeError);
  });

  it.each([
    [{ name: ' ' }, 'A seat has a name'],
    [{ name: 'x'.repeat(41) }, 'up to 40 letters'],
    [{ name: 'Sofa left', rightMetres: 2 }, 'called Sofa left already'],
    [{ rightMetres: NaN }, 'no number'],
    [{ rightMetres: 0.1 }, 'on the main seat'],
    [{ rightMetres: -0.5 }, 'on Sofa left'],
    [{ rightMetres: 2.6 }, 'outside the room'],
    [{ rightMetres: 31 }, 'more than 30 m'],
  ])('are refused with %o: %s', (wrong, sentence) => {
    const added = { name: 'Other', rightMetres: 0.9, backMetres: 0, ...wrong };
    expect(sentenceOf(addSeat({ ...one, room }, added))).toContain(sentence);
  });

  it('are offered a free place and name, up to the most there can be', () => {
    let system: DeclaredSystem = { ...nothingDeclared, room };
    for (let count = 0; count < 6; count++) {
      const next = nextSeat(system);
      if (!next) throw new Error(`no place for seat ${count + 2}`);
      system = known(addSeat(system, next));
    }
    expect(system.seats.map(({ name }) => name)).toEqual(
      [2, 3, 4, 5, 6, 7].map((n) => `Seat ${n}`),
    );
    const full = Array.from({ length: 20 }, (_, index) => ({
      name: `Seat ${index + 2}`,
      rightMetres: index + 1,
      backMetres: 0,
    }));
    expect(sentenceOf(addSeat({ ...nothingDeclared, seats: full }, { ...seat }))).toContain('20');
    expect(full).toHaveLength(20);
  });
});
