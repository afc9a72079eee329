import { describe, expect, it } from 'vitest';
import { reverberationTimes } from '../../../dsp/room/decay';
import { drawRoom, drawSeats } from '../../../dsp/room/draw-room';
import { ceilingPath, ceilingPoint, placeAround } from '../../../dsp/room/place';
import { distanceBetween } from '../../../dsp/room/point';
import { expectClose } from '../../close';

const seeds = Array.from({ length: 12 }, (_, i) => i);

describe('drawn rooms', () => {
  it('repeat with their seed and differ without', () => {
    expect(drawRoom(3)).toEqual(drawRoom(3));
    expect(drawRoom(3)).not.toEqual(drawRoom(4));
  });

  it('are domestic in size and in reverberation when typical', () => {
    for (const seed of seeds) {
      const room = drawRoom(seed);
      const [short, long] = [room.size.x, room.size.y].sort((a, b) => a - b);
      expect(short).toBeGreaterThanOrEqual(3);
      expect(long).toBeLessThanOrEqual(6.5);
      const [seconds] = reverberationTimes(room).slice(5, 6);
      expect(seconds).toBeGreaterThan(0.12);
      expect(seconds).toBeLessThan(0.56);
    }
  });

  it('ring longer when live and hold less bass when leaky', () => {
    const mean = (preset: 'typical' | 'live' | 'leaky', band: number): number =>
      seeds.reduce((sum, seed) => sum + (reverberationTimes(drawRoom(seed, preset))[band] ?? 0), 0);
    expect(mean('live', 5)).toBeGreaterThan(1.8 * mean('typical', 5));
    expect(mean('leaky', 0)).toBeLessThan(0.5 * mean('typical', 0));
    expectClose(mean('leaky', 5) / mean('typical', 5), 1, 0.01);
  });

  it('seat people inside, apart from each other', () => {
    for (const seed of seeds) {
      const room = drawRoom(seed);
      const seats = drawSeats(room, seed, 4);
      expect(seats).toHaveLength(4);
      for (const { x, y, z } of seats) {
        expect(x > 0 && x < room.size.x && y > 0 && y < room.size.y && z > 0.5 && z < 1.6).toBe(
          true,
        );
      }
    }
  });

  it('refuse a kind they do not know', () => {
    const unknown = 'cathedral' as 'typical';
    expect(() => drawRoom(1, unknown)).toThrow(RangeError);
  });
});

describe('places in a room', () => {
  const room = drawRoom(3);
  const seat = { x: room.size.x / 2, y: 1.5, z: 1.1 };

  it('lie where azimuth, elevation and distance say', () => {
    const left = placeAround(room, seat, 30, 0, 1.2);
    expectClose(left, { x: seat.x - 0.6, y: 1.5 + 1.2 * Math.cos(Math.PI / 6), z: 1.1 }, 1e-12);
    const above = placeAround(room, seat, 180, 45, 0.8);
    expectClose(
      above,
      { x: seat.x, y: 1.5 - 0.8 * Math.SQRT1_2, z: 1.1 + 0.8 * Math.SQRT1_2 },
      1e-12,
    );
  });

  it('stay inside the walls, on the line of sight', () => {
    const far = placeAround(room, seat, 90, 0, 50, 0.3);
    expectClose(far, { x: 0.3, y: 1.5, z: 1.1 }, 1e-9);
  });

  it('have a ceiling path made of two straight pieces that meet on the ceiling', () => {
    const source = { x: 0.8, y: 3, z: 0.9 };
    const point = ceilingPoint(room, source, seat);
    expectClose(point.z, room.size.z, 1e-12);
    const pieces = distanceBetween(source, point) + distanceBetween(point, seat);
    expectClose(ceilingPath(room, source, seat), pieces, 1e-9);
  });
});
