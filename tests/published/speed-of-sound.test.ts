// ISO 9613-1:1993, c = 343.2·√(T/293.15 K); the standard was not at hand, the formula as seen in an
// open acoustics library, values computed from it outside this project.
import { it } from 'vitest';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import { expectClose } from '../close';

it.each([
  [-20, 318.927],
  [-10, 325.165],
  [0, 331.286],
  [10, 337.296],
  [15, 340.261],
  [20, 343.2],
  [25, 346.114],
  [30, 349.005],
  [40, 354.714],
])('sound travels at %d °C with %d m/s', (celsius, metresPerSecond) => {
  expectClose(speedOfSound(celsius), metresPerSecond, 6e-4);
});
