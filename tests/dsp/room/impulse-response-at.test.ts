import { describe, expect, it } from 'vitest';
import { nextPowerOfTwo, realSpectrum } from '../../../dsp/fft/fft';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { ceilingPath } from '../../../dsp/room/place';
import { distanceBetween } from '../../../dsp/room/point';
import { expectClose } from '../../close';
import { flatSpeaker, shoebox } from './shoebox';

const size = { x: 5, y: 4, z: 2.6 };
const black = [1, 1, 1, 1, 1, 1];
const speaker = flatSpeaker({ x: 1.1, y: 2.9, z: 1.05 });
const seat = { x: 3.2, y: 1.3, z: 1.2 };
const c = 343.2;
const rate = 48000;

/** Response at a frequency of the response's own grid near hz: [hz, re, im]. */
function binNear(response: Float64Array, sampleRate: number, hz: number): [number, number, number] {
  const spectrum = realSpectrum(response, nextPowerOfTwo(response.length));
  const bin = Math.round((hz * response.length) / sampleRate);
  return [(bin * sampleRate) / response.length, spectrum[2 * bin] ?? 0, spectrum[2 * bin + 1] ?? 0];
}

describe('the way from a speaker to a microphone', () => {
  it('is the direct sound alone, delayed by d/c and divided by d, where walls swallow all', () => {
    const d = distanceBetween(speaker.position, seat);
    const response = impulseResponseAt(shoebox(size, black), speaker, seat, rate, 0.3);
    for (const hz of [150, 400, 1000, 3000]) {
      const [exact, re, im] = binNear(response, rate, hz);
      const turn = (-2 * Math.PI * exact * d) / c;
      const expected = [Math.cos(turn) / d, Math.sin(turn) / d];
      expectClose([re, im], expected, 0.012 / d, 'air and the speaker end at 1 Hz cost a little');
    }
  });

  it('ends without a step, also of a speaker that is flat to all but 0 Hz', () => {
    const walls = [0.1, 0.1, 0.1, 0.1, 0.1, 0.1];
    const deep = flatSpeaker({ x: 1.1, y: 2.9, z: 1.05 });
    const flat = { ...deep, box: { kind: 'sealed', resonanceHz: 0.01, q: 0.7 } } as const;
    const response = impulseResponseAt(shoebox(size, walls), flat, seat, 2000, 1.3, 40);
    const peak = Math.max(...response.map(Math.abs));
    // Less its mean it stands at some −0.1 of its peak; a step of that is as loud as the direct sound.
    expect(Math.abs(response.at(-1) ?? 0)).toBeGreaterThan(0.02 * peak);
    for (let n = response.length - 100; n < response.length; n++) {
      const step = Math.abs((response[n] ?? 0) - (response[n - 1] ?? 0));
      expect(step).toBeLessThan(0.005 * peak);
    }
  });

  it('peaks at the sample of arrival', () => {
    const d = distanceBetween(speaker.position, seat);
    const response = impulseResponseAt(shoebox(size, black), speaker, seat, rate, 0.3);
    const peak = response.reduce((best, v, n) => (v > (response[best] ?? 0) ? n : best), 0);
    expect(Math.abs(peak - (d / c) * rate)).toBeLessThan(0.6);
  });

  it('halves where the distance doubles', () => {
    const room = shoebox({ x: 5, y: 9, z: 2.6 }, black);
    const levels = [1.5, 3, 6].map((d) => {
      const at = { ...speaker.position, y: 1 + d };
      const response = impulseResponseAt(room, speaker, at, rate, 0.3);
      const from = flatSpeaker({ ...speaker.position, y: 1 });
      const moved = impulseResponseAt(room, from, at, rate, 0.3);
      expect(response.length).toBe(moved.length);
      const [, re, im] = binNear(moved, rate, 500);
      return Math.hypot(re, im) * d;
    });
    expectClose(levels, [1, 1, 1], 0.01, 'attenuation of air');
  });

  it('adds the ceiling as a mirror: delayed by its path, weakened by its absorption', () => {
    const room = shoebox(size, [1, 1, 1, 1, 1, 0.36]);
    const d = distanceBetween(speaker.position, seat);
    const over = ceilingPath(room, speaker.position, seat);
    const response = impulseResponseAt(room, speaker, seat, rate, 0.3);
    for (const hz of [80, 200, 700, 2000]) {
      const [exact, re, im] = binNear(response, rate, hz);
      const turn = (path: number): number => (-2 * Math.PI * exact * path) / c;
      const expected = [
        Math.cos(turn(d)) / d + (0.8 * Math.cos(turn(over))) / over,
        Math.sin(turn(d)) / d + (0.8 * Math.sin(turn(over))) / over,
      ];
      expectClose([re, im], expected, 0.012, 'as above, plus the phase of a 1 Hz box at 80 Hz');
    }
  });

  it('agrees with itself at a low rate in the bass', () => {
    const room = shoebox(size, [0.2, 0.3, 0.25, 0.2, 0.3, 0.2]);
    const full = impulseResponseAt(room, speaker, seat, 48000);
    const low = impulseResponseAt(room, speaker, seat, 3000);
    expect(low.length).toBe(full.length / 16);
    for (const hz of [20, 47, 83, 150, 230]) {
      const [, a, b] = binNear(full, 48000, hz);
      expectClose(binNear(low, 3000, hz).slice(1), [a, b], 0.003);
    }
  });

  it('turns over with the polarity, grows with the gain and waits for the delay', () => {
    const room = shoebox(size, black);
    const plain = impulseResponseAt(room, speaker, seat, 8000, 0.2);
    const changed = { ...speaker, inverted: true, gainDb: 20 * Math.log10(2), delaySeconds: 0.001 };
    const other = impulseResponseAt(room, changed, seat, 8000, 0.2);
    const expected = plain.slice(0, 400).map((value) => -2 * value);
    expectClose(other.slice(8, 408), expected, 0.002, 'a sharp edge shifted in frequency rings');
  });

  it('is the same for the same room and another for another seed', () => {
    const walls = [0.2, 0.2, 0.2, 0.2, 0.2, 0.2];
    const first = impulseResponseAt(shoebox(size, walls, 4), speaker, seat, 8000, 0.5);
    const again = impulseResponseAt(shoebox(size, walls, 4), speaker, seat, 8000, 0.5);
    const other = impulseResponseAt(shoebox(size, walls, 5), speaker, seat, 8000, 0.5);
    expectClose(again, first, 0);
    expectClose(other.slice(0, 400), first.slice(0, 400), 0.002, 'bands ring a little');
    expect(other[1200]).not.toBe(first[1200]);
  });

  it('refuses places outside the room', () => {
    const outside = { x: 5.2, y: 1, z: 1 };
    const room = shoebox(size, black);
    expect(() => impulseResponseAt(room, speaker, outside, rate)).toThrow(RangeError);
    expect(() => impulseResponseAt(room, flatSpeaker(outside), seat, rate)).toThrow(RangeError);
    expect(() => impulseResponseAt(room, speaker, seat, 1000)).toThrow(RangeError);
  });
});
