import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../dsp/signal/random';
import { createConvolver } from '../../loop/room/convolver';
import { createFaultLine } from '../../loop/room/faults';
import { createSkew } from '../../loop/room/skew';
import { speakerResponse } from '../../loop/room/speaker-response';
import { roomTruth } from '../../loop/room/truth';
import { satelliteRoom } from '../../loop/rooms';

/* The journeys stand on the loop's room, so the room is held against closed forms here. */

const random = seededRandom(7);
const noise = (length: number) => Float64Array.from({ length }, () => random() - 0.5);

describe('the room of the closed audio loop', () => {
  it('convolves two speakers block by block as the sum of the definition says', () => {
    const responses = [noise(100), noise(37)];
    const inputs = [noise(96), noise(96)];
    const convolver = createConvolver([...responses, null], 16);
    const heard: number[] = [];
    for (let start = 0; start < 96; start += 16) {
      for (const [index, input] of inputs.entries()) {
        convolver.add(index, input.subarray(start, start + 16));
      }
      heard.push(...convolver.take());
    }
    for (let n = 0; n < 96; n++) {
      let sum = 0;
      for (const [index, input] of inputs.entries()) {
        for (let k = 0; k <= n; k++) sum += (responses[index]?.[k] ?? 0) * (input[n - k] ?? 0);
      }
      expect(heard[n]).toBeCloseTo(sum, 12);
    }
  });

  it('wakes a speaker that was silent for longer than the room rings', () => {
    const convolver = createConvolver([Float64Array.of(0.5, 0.25)], 4);
    for (let block = 0; block < 20; block++) {
      convolver.add(0, new Float64Array(4));
      expect([...convolver.take()]).toEqual([0, 0, 0, 0]);
    }
    convolver.add(0, Float64Array.of(0, 1, 0, 0));
    const woken = [...convolver.take()];
    for (const [n, value] of [0, 0.5, 0.25, 0].entries()) expect(woken[n]).toBeCloseTo(value, 14);
  });

  it('lets the microphone’s clock run fast: captured = played × (1 + skew)', () => {
    const skew = createSkew(1 + 100e-6);
    const heard: number[] = [];
    for (let start = 0; start < 8192; start += 512) {
      heard.push(
        ...skew(Float64Array.from({ length: 512 }, (_, n) => Math.sin(0.3 * (start + n)))),
      );
    }
    for (let n = 100; n < heard.length; n += 97) {
      expect(heard[n]).toBeCloseTo(Math.sin((0.3 * n) / (1 + 100e-6)), 4);
    }
  });

  it('has speakers that fall as closed forms say', () => {
    const dropAt = (hz: number, q: number): number => {
      const box = { kind: 'closed', resonanceHz: 50, q } as const;
      return 20 * Math.log10(Math.hypot(...speakerResponse({ box }, hz)));
    };
    // |H| = Q at resonance; the Butterworth alignment is 10·log10(1/2) down there.
    expect(dropAt(50, 0.5)).toBeCloseTo(20 * Math.log10(0.5), 9);
    expect(dropAt(50, Math.SQRT1_2)).toBeCloseTo(-10 * Math.log10(2), 9);
    // A fourth-order Butterworth high-pass: |H|² = x⁸/(1 + x⁸).
    const box = { kind: 'vented', tuningHz: 100 } as const;
    const power = Math.hypot(...speakerResponse({ box }, 80)) ** 2;
    expect(power).toBeCloseTo(0.8 ** 8 / (1 + 0.8 ** 8), 9);
  });

  it('knows its own truth: paths, the inverted speaker, the points of a Butterworth fall', () => {
    const truth = roomTruth(satelliteRoom);
    // Front left stands (2.55, 1.49, −0.10) m from the microphone.
    expect(truth[0]?.pathMetres).toBeCloseTo(Math.sqrt(2.55 ** 2 + 1.49 ** 2 + 0.1 ** 2), 9);
    expect(truth.map(({ polarity }) => polarity)).toEqual([
      'normal',
      'normal',
      'normal',
      'normal',
      'normal',
      'inverted',
    ]);
    // x⁸/(1 + x⁸) = 1/10 gives x = 9^(−1/8).
    expect(truth[2]?.f10Hz).toBeCloseTo(104 * 9 ** (-1 / 8), 6);
  });

  it('drops, repeats and clips exactly what it is told to', () => {
    const quiet = () => 0;
    const line = createFaultLine();
    const block = Float64Array.of(0.1, 0.2, 0.3, 0.4);
    line.inject({ kind: 'drop', frames: 6 });
    expect([...line.apply(block, quiet)]).toEqual([]);
    expect([...line.apply(block, quiet)]).toEqual([0.3, 0.4]);
    line.inject({ kind: 'repeat', frames: 2 });
    expect([...line.apply(block, quiet)]).toEqual([0.1, 0.2, 0.3, 0.4, 0.3, 0.4]);
    line.inject({ kind: 'clip', levelDb: -12 });
    expect(line.apply(block, quiet)[3]).toBeCloseTo(10 ** (-12 / 20), 12);
    line.inject({ kind: 'none' });
    expect([...line.apply(block, quiet)]).toEqual([...block]);
  });
});
