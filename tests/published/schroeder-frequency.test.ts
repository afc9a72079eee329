// Schroeder, JASA 99 (1996): 2000·√(T/V); values computed from the formula outside this project.
import { it } from 'vitest';
import { schroederFrequency } from '../../dsp/decay/schroeder-frequency';
import { expectClose } from '../close';

it.each([
  [0.4, 50, 178.885],
  [0.5, 80, 158.114],
  [1, 200, 141.421],
])('modes overlap from %d s and %d m³ on above %d Hz', (seconds, volume, hz) => {
  const exact = (value: number) => ({ value, interval: [value, value] as const });
  expectClose(schroederFrequency(exact(seconds), exact(volume)).hz, hz, 6e-4);
});
