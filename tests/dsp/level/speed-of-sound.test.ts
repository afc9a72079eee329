import { expect, it } from 'vitest';
import { speedOfSound } from '../../../dsp/level/speed-of-sound';

it.each([-273.15, -300, NaN, Infinity])('speedOfSound refuses %d °C', (celsius) => {
  expect(() => speedOfSound(celsius)).toThrow(RangeError);
});

it('speedOfSound rises with warmth', () => {
  expect(speedOfSound(21)).toBeGreaterThan(speedOfSound(20));
});
