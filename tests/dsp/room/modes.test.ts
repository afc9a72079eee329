import { describe, expect, it } from 'vitest';
import { nextPowerOfTwo, realSpectrum } from '../../../dsp/fft/fft';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { flatSpeaker, shoebox } from './shoebox';

/** f = (c/2)·√((nx/Lx)² + (ny/Ly)² + (nz/Lz)²). Source: Morse, Vibration and Sound, from memory. */
function modeHz([nx, ny, nz]: readonly [number, number, number]): number {
  return (343.2 / 2) * Math.hypot(nx / 4.1, ny / 3.2, nz / 2.5);
}

describe('the bass of a stiff room', () => {
  it('peaks at the modes of a rigid shoebox', () => {
    const room = shoebox({ x: 4.1, y: 3.2, z: 2.5 }, [0.08, 0.08, 0.08, 0.08, 0.08, 0.08]);
    const source = flatSpeaker({ x: 0, y: 0, z: 0 });
    const corner = { x: 4.1, y: 3.2, z: 2.5 };
    const rate = 1500;
    const response = impulseResponseAt(room, source, corner, rate);
    const size = nextPowerOfTwo(4 * response.length);
    const spectrum = realSpectrum(response, size);
    const level = (bin: number): number =>
      Math.hypot(spectrum[2 * bin] ?? 0, spectrum[2 * bin + 1] ?? 0);
    const peaks: number[] = [];
    for (let bin = 2; (bin * rate) / size < 100; bin++) {
      if (level(bin) > level(bin - 1) && level(bin) > level(bin + 1))
        peaks.push((bin * rate) / size);
    }
    // Far enough from their neighbours to stand as peaks of their own.
    const modes = [
      [1, 0, 0],
      [0, 1, 0],
      [1, 1, 0],
      [2, 0, 0],
    ] as const;
    for (const mode of modes) {
      const hz = modeHz(mode);
      const nearest = Math.min(...peaks.map((peak) => Math.abs(peak - hz)));
      expect(nearest, `mode ${mode.join('')} at ${hz.toFixed(2)} Hz`).toBeLessThan(1);
    }
  });

  it('rises below the first mode, less so where walls leak', () => {
    const size = { x: 4.1, y: 3.2, z: 2.5 };
    const source = flatSpeaker({ x: 0.5, y: 0.6, z: 0.5 });
    const seat = { x: 2.6, y: 2.2, z: 1.2 };
    const gain = (alpha: number): number => {
      const room = shoebox(
        size,
        Array.from({ length: 6 }, () => alpha),
      );
      const response = impulseResponseAt(room, source, seat, 1500);
      const spectrum = realSpectrum(response, response.length);
      const bin = Math.round((14 * response.length) / 1500);
      return 20 * Math.log10(Math.hypot(spectrum[2 * bin] ?? 0, spectrum[2 * bin + 1] ?? 0));
    };
    expect(gain(0.06)).toBeGreaterThan(gain(0.4) + 2);
    expect(gain(0.4)).toBeGreaterThan(gain(0.9) + 2);
  });
});
