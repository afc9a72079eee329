import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { disturbance } from '../../../dsp/room/disturbances';

const rate = 48000;

/** Share of a noise's energy between two frequencies. */
function shareBetween(signal: Float64Array, lowHz: number, highHz: number): number {
  const size = 2 ** 18;
  const spectrum = realSpectrum(signal, size);
  let inside = 0;
  let all = 0;
  for (let k = 0; k <= size / 2; k++) {
    const power = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
    all += power;
    const hz = (k * rate) / size;
    if (hz >= lowHz && hz <= highHz) inside += power;
  }
  return inside / all;
}

describe('a noise that spoils a measurement', () => {
  it('peaks at 1, is finite and is the same for the same seed', () => {
    for (const kind of ['bang', 'rumble', 'hum', 'voice'] as const) {
      const signal = disturbance(kind, rate, 5);
      const peak = signal.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      expect(peak).toBe(1);
      expect(disturbance(kind, rate, 5)).toEqual(signal);
    }
    expect(disturbance('bang', rate, 6)).not.toEqual(disturbance('bang', rate, 5));
  });

  it('lies where such noises lie', () => {
    expect(shareBetween(disturbance('rumble', rate, 1), 20, 100)).toBeGreaterThan(0.9);
    expect(shareBetween(disturbance('voice', rate, 1), 90, 4000)).toBeGreaterThan(0.9);
    expect(shareBetween(disturbance('bang', rate, 1), 20, 600)).toBeGreaterThan(0.5);
    expect(shareBetween(disturbance('bang', rate, 1), 2000, 20000)).toBeGreaterThan(0.005);
    const lines = [50, 100, 150, 200, 250].map((hz) => [hz - 2, hz + 2] as const);
    const hum = disturbance('hum', rate, 1);
    const inLines = lines.reduce((sum, [low, high]) => sum + shareBetween(hum, low, high), 0);
    expect(inLines).toBeGreaterThan(0.99);
  });

  it('is sudden when it is a bang', () => {
    const bang = disturbance('bang', rate, 1);
    const energy = (from: number, to: number): number =>
      bang.subarray(from, to).reduce((sum, value) => sum + value * value, 0);
    expect(energy(0, rate / 10)).toBeGreaterThan(10 * energy(rate / 10, rate / 2));
  });
});
