import { describe, expect, it } from 'vitest';
import { findHum } from '../../../dsp/disturbance/find-hum';
import { expectClose } from '../../close';
import { noise, rate } from './segments';
import { bang, hum } from './sounds';

describe('hum in a noise floor', () => {
  it.each([50, 60])('finds hum of %i Hz and its level', (mainsHz) => {
    for (let seed = 0; seed < 4; seed++) {
      const lines = hum(mainsHz * (1 + 0.001 * Math.sin(seed)))(4 * rate, seed);
      const rms = Math.sqrt(lines.reduce((sum, v) => sum + v * v, 0) / lines.length);
      const floor = noise(4 * rate, seed, -70);
      const found = findHum(
        floor.map((v, n) => v + (0.001 * (lines[n] ?? 0)) / rms),
        rate,
      );
      expect(found?.mainsHz).toBe(mainsHz);
      expectClose(found?.levelDb, -60, 1);
      expectClose(found?.lineHz[0], mainsHz, 0.2);
    }
  });

  it('finds none in noise, nor in a bang, nor in silence', () => {
    for (let seed = 0; seed < 40; seed++) {
      expect(findHum(noise(3 * rate, seed + 500, -60), rate)).toBeNull();
    }
    expect(findHum(bang(4 * rate, 3), rate)).toBeNull();
    expect(findHum(new Float64Array(4 * rate), rate)).toBeNull();
  });

  it('is null for less than it can judge, and refuses a rate that is none', () => {
    expect(findHum(hum(50)(rate >> 1, 1), rate)).toBeNull();
    expect(() => findHum(new Float64Array(9), 0)).toThrow(RangeError);
  });
});
