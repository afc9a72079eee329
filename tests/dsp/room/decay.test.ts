import { describe, expect, it } from 'vitest';
import { ventedAlignment } from '../../../dsp/room/box';
import { bandDecay, reverberationTimes } from '../../../dsp/room/decay';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { placeAround } from '../../../dsp/room/place';
import type { Point } from '../../../dsp/room/point';
import type { Speaker } from '../../../dsp/room/speaker';
import { expectClose } from '../../close';
import { flatSpeaker, shoebox } from './shoebox';

/** The flat speaker without the bass, whose few modes would outweigh all else. */
function highSpeaker(position: Point): Speaker {
  return { ...flatSpeaker(position), box: ventedAlignment(700, 0) };
}

const size = { x: 4.4, y: 3.7, z: 3 };
const surface = 2 * (4.4 * 3.7 + 4.4 * 3 + 3.7 * 3);
const volume = 4.4 * 3.7 * 3;

/** Eyring's formula, 0.161 V/(−S ln(1 − α)). Source: Eyring, JASA 1930, from memory. */
function eyring(alpha: number): number {
  return (0.161 * volume) / (-surface * Math.log(1 - alpha));
}

/** T20 by backward integration of a response. */
function measuredT20(response: Float64Array, rate: number): number {
  const remaining = new Float64Array(response.length + 1);
  for (let n = response.length - 1; n >= 0; n--) {
    remaining[n] = (remaining[n + 1] ?? 0) + (response[n] ?? 0) ** 2;
  }
  const at = (db: number): number =>
    remaining.findIndex((value) => value < (remaining[0] ?? 0) * 10 ** (-db / 10));
  return (3 * (at(25) - at(5))) / rate;
}

describe('the decay of a room', () => {
  it('is Eyring’s, and a little longer as in all empty shoeboxes', () => {
    for (const alpha of [0.1, 0.25, 0.4]) {
      const room = shoebox(
        size,
        Array.from({ length: 6 }, () => alpha),
      );
      const ratio = bandDecay(room, 5).reverberationSeconds / eyring(alpha);
      expect(ratio).toBeGreaterThan(0.95);
      expect(ratio).toBeLessThan(1.25);
    }
  });

  it('is what a response computed in the room shows', () => {
    const room = shoebox(size, [0.2, 0.3, 0.25, 0.2, 0.35, 0.2]);
    const rate = 8000;
    const seat = { x: 2.9, y: 1.3, z: 1.2 };
    const speaker = highSpeaker({ x: 1, y: 2.8, z: 1 });
    const measured = measuredT20(impulseResponseAt(room, speaker, seat, rate), rate);
    const expected = reverberationTimes(room)[6] ?? 0;
    expectClose(measured / expected, 1, 0.15, 'one place in the room, direct sound included');
  });

  it('passes from image sources to the diffuse tail without a step', () => {
    const room = shoebox(size, [0.2, 0.3, 0.25, 0.2, 0.35, 0.2]);
    const rate = 16000;
    const seat = { x: 2.9, y: 1.3, z: 1.2 };
    const decay = bandDecay(room, 5);
    const steps = [0.035, 0.047, 0.06, 0.07, 0.08, 0.095, 0.12];
    const excess = new Float64Array(steps.length - 1);
    const places = Array.from({ length: 10 }, (_, i) =>
      placeAround(room, seat, 36 * i, 5 * (i % 3), 1.2),
    );
    for (const place of places) {
      const response = impulseResponseAt(room, highSpeaker(place), seat, rate);
      for (let i = 0; i < excess.length; i++) {
        const [from, to] = [(steps[i] ?? 0) * rate, (steps[i + 1] ?? 0) * rate];
        let energy = 0;
        for (let n = Math.round(from); n < Math.round(to); n++) energy += (response[n] ?? 0) ** 2;
        // A unit source's energy per second, in samples.
        const expected = (decay.energyAt((from + to) / 2 / rate) * (to - from)) / rate;
        excess[i] = (excess[i] ?? 0) + energy / expected / places.length;
      }
    }
    const db = excess.map((value) => 10 * Math.log10(value));
    expectClose(db, [0, 0, 0, 0, 0, 0], 2, 'a mean over ten places');
    expectClose((db[1] ?? 0) - (db[5] ?? 0), 0, 1.5, 'images against tail');
  });
});
