import { describe, expect, it } from 'vitest';
import { nextPowerOfTwo, realSpectrum } from '../../../dsp/fft/fft';
import { clipRecording, damageRecording } from '../../../dsp/room/faults';
import { roomNoise } from '../../../dsp/room/room-noise';
import { recordOnClock } from '../../../dsp/room/second-clock';
import { expectClose } from '../../close';

describe('a recorder on another clock', () => {
  it('writes a tone down at the shifted pitch and delay', () => {
    const rate = 48000;
    const signal = Float64Array.from({ length: 6000 }, (_, n) =>
      Math.sin((2 * Math.PI * 9000 * n) / rate),
    );
    const ratio = 1 + 120e-6;
    const latency = 100.3;
    const recorded = recordOnClock(signal, ratio, latency, 5500);
    const expected = Float64Array.from({ length: 5500 }, (_, n) =>
      Math.sin((2 * Math.PI * 9000 * ((n - latency) / ratio)) / rate),
    );
    expectClose(recorded.slice(200, 5400), expected.slice(200, 5400), 2e-4);
    expectClose(recorded.slice(0, 60), new Float64Array(60), 1e-12, 'before the signal');
  });

  it('goes from one rate to another', () => {
    const signal = Float64Array.from({ length: 4410 }, (_, n) =>
      Math.cos((2 * Math.PI * 1000 * n) / 44100),
    );
    const recorded = recordOnClock(signal, 48000 / 44100, 0, 4800);
    const expected = Float64Array.from({ length: 4800 }, (_, n) =>
      Math.cos((2 * Math.PI * 1000 * n) / 48000),
    );
    expectClose(recorded.slice(60, 4700), expected.slice(60, 4700), 2e-4);
    expect(() => recordOnClock(signal, 0.5, 0, 10)).toThrow(RangeError);
  });

  it('loses and repeats frames where it is told to', () => {
    const recording = Float32Array.from({ length: 10 }, (_, n) => n);
    const faults = [
      { atSample: 7, samples: -2 },
      { atSample: 2, samples: 3 },
    ];
    expect([...damageRecording(recording, faults)]).toEqual([0, 1, 5, 6, 5, 6, 7, 8, 9]);
    expect(() => damageRecording(recording, [{ atSample: 9, samples: 3 }])).toThrow(RangeError);
    expect(() => damageRecording(recording, [{ atSample: 1, samples: -3 }])).toThrow(RangeError);
  });

  it('clips both ways', () => {
    const recording = Float32Array.from([0.2, -0.9, 0.6]);
    clipRecording(recording, 0.5);
    expectClose(recording, [0.2, -0.5, 0.5], 1e-6);
  });
});

describe('the noise of a room', () => {
  it('has the rms that was asked for', () => {
    const rms = (noise: Float64Array): number =>
      Math.sqrt(noise.reduce((sum, value) => sum + value * value, 0) / noise.length);
    const hiss = roomNoise(200000, 48000, 1, { pink: 0, hiss: 0.01 });
    expectClose(rms(hiss), 0.01, 0.0002);
    const pink = roomNoise(2 ** 21, 48000, 2, { pink: 0.01, hiss: 0 });
    expectClose(rms(pink), 0.01, 0.0015, 'its slow part varies');
  });

  it('falls by 3 dB per octave', () => {
    const size = 2 ** 19;
    const noise = roomNoise(size, 48000, 3, { pink: 1, hiss: 0 });
    const spectrum = realSpectrum(noise, nextPowerOfTwo(size));
    const octaveDb = (middle: number): number => {
      let power = 0;
      for (
        let k = Math.ceil((middle / Math.SQRT2 / 48000) * size);
        (k * 48000) / size < middle * Math.SQRT2;
        k++
      ) {
        power += (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
      }
      return 10 * Math.log10(power);
    };
    // Equal power per octave.
    const levels = [31.25, 125, 500, 2000, 8000].map((hz) => octaveDb(hz) - octaveDb(250));
    expectClose(levels, [0, 0, 0, 0, 0], 1.5);
  });

  it('repeats with its seed', () => {
    const rms = { pink: 0.1, hiss: 0.1 };
    expect(roomNoise(100, 48000, 5, rms)).toEqual(roomNoise(100, 48000, 5, rms));
    expect(roomNoise(100, 48000, 5, rms)).not.toEqual(roomNoise(100, 48000, 6, rms));
  });
});
