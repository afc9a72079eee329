import FFT from 'fft.js';
import { describe, expect, it } from 'vitest';
import {
  complexSignal,
  complexSpectrum,
  nextPowerOfTwo,
  realSignal,
  realSpectrum,
} from '../../../dsp/fft/fft';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const noise = (length: number, seed: number): Float64Array => {
  const next = gaussian(seededRandom(seed));
  return Float64Array.from({ length }, next);
};

/** The definition itself, Σ x_n e^(−2πi kn/size), one bin. */
function definition(signal: Float64Array, size: number, k: number): [number, number] {
  let re = 0;
  let im = 0;
  signal.forEach((v, n) => {
    const angle = (-2 * Math.PI * ((k * n) % size)) / size;
    re += v * Math.cos(angle);
    im += v * Math.sin(angle);
  });
  return [re, im];
}

describe('realSpectrum', () => {
  it.each([2, 4, 8, 16, 64, 128, 1024])('is the definition for size %d', (size) => {
    const signal = noise(size, size);
    const spectrum = realSpectrum(signal, size);
    expect(spectrum).toHaveLength(size + 2);
    for (let k = 0; k <= size / 2; k++) {
      expectClose([...spectrum.slice(2 * k, 2 * k + 2)], definition(signal, size, k), 1e-11);
    }
  });

  // The longest are split in four.
  it.each([2 ** 17, 2 ** 18, 2 ** 20])('is the definition in some bins for size %d', (size) => {
    const signal = noise(size - 100, 8);
    const kept = signal.slice();
    const spectrum = realSpectrum(signal, size);
    expect(signal).toEqual(kept);
    for (const k of [
      0,
      1,
      2,
      1021,
      size / 16 + 3,
      size / 8,
      size / 4 - 1,
      size / 4 + 1,
      size / 2,
    ]) {
      expectClose([...spectrum.slice(2 * k, 2 * k + 2)], definition(signal, size, k), 1e-8);
    }
  });

  it('pads with zeros, whatever was transformed before', () => {
    realSpectrum(noise(64, 1), 64);
    const signal = noise(10, 2);
    const spectrum = realSpectrum([...signal], 64);
    for (const k of [0, 1, 17, 32]) {
      expectClose([...spectrum.slice(2 * k, 2 * k + 2)], definition(signal, 64, k), 1e-12);
    }
  });

  it('has no imaginary part at the first and the last bin', () => {
    const spectrum = realSpectrum(noise(32, 3), 32);
    expect([spectrum[1], spectrum[33]]).toEqual([0, 0]);
  });

  it('keeps energy: Parseval', () => {
    const signal = noise(4096, 4);
    const spectrum = realSpectrum(signal, 4096);
    let energy = 0;
    for (let k = 0; k <= 2048; k++) {
      const power = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
      energy += (k === 0 || k === 2048 ? 1 : 2) * power;
    }
    expectClose(energy / 4096 / signal.reduce((sum, v) => sum + v * v, 0), 1, 1e-13);
  });

  it.each([0, 1, 3, 2.5, 12, NaN, Infinity])('refuses size %d', (size) => {
    expect(() => realSpectrum([1], size)).toThrow(RangeError);
  });

  it('refuses a signal longer than the size', () => {
    expect(() => realSpectrum([1, 2, 3], 2)).toThrow(RangeError);
  });

  it('writes into an array that is given, whatever it held, and refuses one of another length', () => {
    const into = new Float64Array(66).fill(7);
    expect(realSpectrum(noise(50, 5), 64, into)).toBe(into);
    expect(into).toEqual(realSpectrum(noise(50, 5), 64));
    expect(() => realSpectrum([1], 64, new Float64Array(64))).toThrow(RangeError);
  });
});

describe('realSignal', () => {
  it.each([2, 4, 8, 32, 2 ** 14, 2 ** 17, 2 ** 18])('takes a spectrum of size %d back', (size) => {
    const signal = noise(size, 5);
    expectClose(realSignal(realSpectrum(signal, size), size), signal, 1e-14);
  });

  it('leaves the spectrum it was given alone', () => {
    const spectrum = realSpectrum(noise(16, 6), 16);
    const kept = spectrum.slice();
    realSignal(spectrum, 16);
    expect(spectrum).toEqual(kept);
  });

  it('refuses a spectrum of another size', () => {
    expect(() => realSignal(new Float64Array(16), 16)).toThrow(RangeError);
    expect(() => realSignal(new Float64Array(5), 3)).toThrow(RangeError);
  });
});

describe('complexSpectrum', () => {
  it('is that of fft.js where it is split, and goes back', () => {
    const size = 2 ** 17;
    const signal = noise(2 * size, 9);
    const kept = signal.slice();
    const spectrum = complexSpectrum(signal);
    expect(signal).toEqual(kept);
    const whole = new Float64Array(2 * size);
    new FFT(size).transform(whole, signal);
    expectClose(spectrum, whole, 1e-9);
    expectClose(complexSignal(spectrum), signal, 1e-12);
  });

  it.each([1, 2, 4, 8, 256])('is the definition for size %d, and goes back', (size) => {
    const signal = noise(2 * size, 7);
    const spectrum = complexSpectrum(signal);
    const real = signal.filter((_, n) => n % 2 === 0);
    const imaginary = signal.filter((_, n) => n % 2 === 1);
    for (let k = 0; k < size; k++) {
      const [a, b] = definition(real, size, k);
      const [c, d] = definition(imaginary, size, k);
      expectClose([spectrum[2 * k], spectrum[2 * k + 1]], [a - d, b + c], 1e-11);
    }
    expectClose(complexSignal(spectrum), signal, 1e-13);
  });

  it('refuses a length that is not twice a power of two', () => {
    expect(() => complexSpectrum(new Float64Array(6))).toThrow(RangeError);
    expect(() => complexSignal(new Float64Array(3))).toThrow(RangeError);
    expect(() => complexSpectrum(new Float64Array(0))).toThrow(RangeError);
  });
});

it.each([
  [0, 2],
  [2, 2],
  [3, 4],
  [1024, 1024],
  [1025, 2048],
])('nextPowerOfTwo(%d) is %d', (count, size) => {
  expect(nextPowerOfTwo(count)).toBe(size);
});
