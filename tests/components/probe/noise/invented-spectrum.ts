import type { NoiseSpectrum } from '../../../../src/noise/noise-state';

/** A spectrum nobody measured, from 20 Hz to 20 kHz in so many bands an octave. */
export function inventedSpectrum(bandsPerOctave: number, shift = 0): NoiseSpectrum {
  const low = Math.ceil(Math.log2(20 / 1000) * bandsPerOctave);
  const high = Math.floor(Math.log2(20) * bandsPerOctave);
  const hz = Array.from(
    { length: high - low + 1 },
    (_, index) => 1000 * 2 ** ((low + index) / bandsPerOctave),
  );
  return {
    hz,
    db: hz.map((f) => 62 + shift - 10 * Math.log10(1 + (55 / f) ** 4)),
    noiseDb: hz.map((f) => (f > 15_000 ? null : 34 - 6 * Math.log10(f / 100))),
    coherence: hz.map((f) => (f < 60 ? 0.7 : 0.98)),
    unit: 'dB SPL',
  };
}
