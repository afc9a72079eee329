import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { markSignal, standardMark } from '../../../dsp/signal/mark';
import { expectClose } from '../../close';

const mark = standardMark(48_000);
const signal = markSignal(mark);

/** Energy between two frequencies, as a share of the whole. */
function energyShare(lowHz: number, highHz: number): number {
  const size = 8192;
  const spectrum = realSpectrum(signal, size);
  let inside = 0;
  let whole = 0;
  for (let k = 0; k <= size / 2; k++) {
    const power = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
    const hz = (k * mark.sampleRate) / size;
    whole += power;
    if (hz >= lowHz && hz <= highHz) inside += power;
  }
  return inside / whole;
}

describe('markSignal', () => {
  it('lasts 30 ms, peaks at 1, and begins and ends in silence', () => {
    expect(signal).toHaveLength(1440);
    expectClose([signal[0], signal[1439]], [0, 0], 0.001);
    const peak = signal.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    expectClose(peak, 1, 0.001);
  });

  it('keeps nearly all of its energy between 2 and 12 kHz', () => {
    expect(energyShare(2000, 12_000)).toBeGreaterThan(0.98);
    expect(energyShare(0, 500)).toBeLessThan(1e-5);
  });

  it('compresses to a peak far narrower than a reflection path', () => {
    const lagged = (lag: number): number =>
      signal.reduce((sum, v, n) => sum + v * (signal[n + lag] ?? 0), 0) / (signal.length / 2);
    expect(lagged(0)).toBeGreaterThan(0.85);
    for (let lag = 12; lag < 200; lag++) expect(Math.abs(lagged(lag))).toBeLessThan(0.25);
  });

  it('rises evenly: half way through, it passes 7 kHz', () => {
    const part = signal.slice(720 - 48, 720 + 48);
    const spectrum = realSpectrum(part, 1024);
    let best = 0;
    let bestPower = 0;
    for (let k = 0; k <= 512; k++) {
      const power = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
      if (power > bestPower) [best, bestPower] = [k, power];
    }
    expectClose((best * 48_000) / 1024, 7000, 350, 'the chirp covers 667 Hz within the window');
  });

  it.each([
    { ...mark, endHz: 24_001 },
    { ...mark, startHz: 0 },
    { ...mark, lengthSamples: 0 },
    { ...mark, fadeSamples: 721 },
    { ...mark, sampleRate: NaN },
  ])('refuses %o', (spec) => {
    expect(() => markSignal(spec)).toThrow(RangeError);
  });
});
