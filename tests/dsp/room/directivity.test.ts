import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { bandWeights } from '../../../dsp/room/bands';
import { diffusePower, directivityGain } from '../../../dsp/room/directivity';
import { drawSpeaker, placeSpeaker } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { ceilingPoint } from '../../../dsp/room/place';
import { expectClose } from '../../close';
import { flatModel, shoebox } from './shoebox';

const beam = { cornerHz: 1500, floorDb: -22 };

describe('a speaker’s beam', () => {
  it('is whole on axis, falls to −3 dB where f(1 − cos θ)/2 reaches the corner', () => {
    expectClose(directivityGain(beam, 1, 16000), 1, 1e-12);
    const free = { cornerHz: 1500, floorDb: -200 };
    expectClose(directivityGain(free, 0, 3000), Math.SQRT1_2, 1e-9);
  });

  it('is round in the bass and narrow at the top', () => {
    const power = diffusePower(beam);
    expectClose(power[0], 1, 0.001);
    expect(power.every((value, i) => i === 0 || value <= (power[i - 1] ?? 0))).toBe(true);
    expect(power.at(-1)).toBeLessThan(0.2);
  });

  it('leaks 8 to 15 dB less towards the seat when it plays by way of the ceiling', () => {
    const room = shoebox({ x: 4.5, y: 5.5, z: 2.5 }, [1, 1, 1, 1, 1, 1]);
    const seat = { x: 2.2, y: 1.5, z: 1.1 };
    const position = { x: 1, y: 4, z: 1.2 };
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const { directivity } = drawSpeaker(seed, { kind: 'bounced' });
      const aim = ceilingPoint(room, position, seat);
      const speaker = placeSpeaker({ ...flatModel, directivity }, position, aim);
      const direct = placeSpeaker({ ...flatModel, directivity }, position, seat);
      const level = (from: typeof speaker): number => {
        const response = impulseResponseAt(room, from, seat, 48000, 0.08);
        const spectrum = realSpectrum(response, response.length);
        const bin = Math.round((8000 * response.length) / 48000);
        return 20 * Math.log10(Math.hypot(spectrum[2 * bin] ?? 0, spectrum[2 * bin + 1] ?? 0));
      };
      const leak = level(speaker) - level(direct);
      expect(leak).toBeGreaterThan(-15.5);
      expect(leak).toBeLessThan(-7.5);
    }
  });
});

describe('bands', () => {
  it('have weights that add up to one everywhere', () => {
    for (const hz of [0, 5, 31.25, 100, 177, 1000, 7321, 15999, 24000]) {
      const weights = bandWeights(hz);
      expectClose(
        weights.reduce((sum, weight) => sum + weight, 0),
        1,
        1e-12,
      );
    }
  });
});
