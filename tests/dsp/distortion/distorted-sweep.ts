import { convolve } from '../../../dsp/fft/convolve';
import { noiseSpectrum } from '../../../dsp/distortion/band-energy';
import type { HarmonicReading } from '../../../dsp/distortion/harmonic-reading';
import { harmonicLeadSeconds } from '../../../dsp/distortion/harmonic-windows';
import { readHarmonics } from '../../../dsp/distortion/read-harmonics';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import { roomNoise } from '../../../dsp/room/room-noise';
import { sweepSignal, type SweepSpec } from '../../../dsp/signal/sweep';

export const rate = 48_000;
const afterSamples = Math.round(1.36 * rate);

/** y = x + a2 x² + a3 x³ + a4 x⁴ + a5 x⁵. */
export interface Polynomial {
  readonly a2: number;
  readonly a3: number;
  readonly a4: number;
  readonly a5: number;
}

/**
 * Harmonics 1 to 5 of a sine of peak 1 through the polynomial: sin² = (1 − cos 2φ)/2,
 * sin³ = (3 sin φ − sin 3φ)/4, sin⁴ = (3 − 4 cos 2φ + cos 4φ)/8,
 * sin⁵ = (10 sin φ − 5 sin 3φ + sin 5φ)/16.
 */
export function harmonicsOf({ a2, a3, a4, a5 }: Polynomial): number[] {
  return [
    1 + (3 / 4) * a3 + (5 / 8) * a5,
    a2 / 2 + a4 / 2,
    a3 / 4 + (5 / 16) * a5,
    a4 / 8,
    a5 / 16,
  ];
}

/**
 * The sweep through the polynomial. Where its highest power would pass half the rate it fades to
 * none, as nothing above half the rate comes out of a speaker.
 */
export function distort(sweep: SweepSpec, { a2, a3, a4, a5 }: Polynomial): Float64Array {
  const top = 0.5 * sweep.sampleRate;
  return sweepSignal(sweep).map((x, n) => {
    const hz = sweep.startHz * (sweep.endHz / sweep.startHz) ** (n / sweep.lengthSamples);
    const below = (order: number): number => Math.min(1, Math.max(0, (top - order * hz) / 1000));
    const even = a2 * x * x * below(2) + a4 * x ** 4 * below(4);
    return x + even + a3 * x ** 3 * below(3) + a5 * x ** 5 * below(5);
  });
}

/** Reads what was played through a response, with noise of an rms, dB re full scale. */
export function readPlayed(
  played: Float64Array,
  sweep: SweepSpec,
  through: { readonly response: Float64Array; readonly arrival: number } | null,
  noiseDb: number,
  seed: number,
): HarmonicReading {
  const before = Math.ceil(harmonicLeadSeconds(sweep) * rate);
  const arrival = through?.arrival ?? 0;
  const heard = noise(before + sweep.lengthSamples + afterSamples, noiseDb, seed);
  const sound = through ? convolve(played, through.response) : played;
  for (let n = 0; n < Math.min(sound.length, heard.length - before); n++) {
    heard[before + n] = (heard[before + n] ?? 0) + (sound[n] ?? 0);
  }
  const lengths = { preSamples: before, lengthSamples: before + afterSamples };
  const response = deconvolveSweep(heard, before, sweep, lengths);
  const silence = deconvolveSweep(noise(heard.length, noiseDb, seed + 0.5), before, sweep, lengths);
  return readHarmonics(response, sweep, before + arrival, noiseSpectrum(silence));
}

function noise(length: number, rmsDb: number, seed: number): Float64Array {
  const rms = 10 ** (rmsDb / 20);
  return roomNoise(length, rate, seed, { pink: 0.95 * rms, hiss: 0.1 * rms });
}
