import type { Schedule } from '../../src/take/schedule';

/** Density of a room's noise per Hz from 2 to 12 kHz, of its power: hiss up to 24 kHz and pink. */
const noisePerHz = 0.5 / 24000 + (0.5 * (Math.log(6) / Math.log(6000))) / 10000;
/** Rms frequency of a mark, flat from 2 to 12 kHz. */
const markHz = Math.sqrt((12000 ** 3 - 2000 ** 3) / (3 * 10000));
const markSeconds = 0.03;

/**
 * Cramér-Rao: least standard deviation of the time of a mark `snrDb` over noise, seconds:
 * 1/(2π·f_rms·√(2E/N0)). Kay, Estimation Theory, 1993, section 3.11, from memory.
 */
export function markTimeBound(snrDb: number): number {
  const ratio = (2 * markSeconds * 10 ** (snrDb / 10)) / noisePerHz;
  return 1 / (2 * Math.PI * markHz * Math.sqrt(ratio));
}

/** Least standard deviation of the skew from all marks of a take, ppm. */
export function skewBound(snrDb: number, { markStarts, sampleRate }: Schedule): number {
  const mean = markStarts.reduce((sum, start) => sum + start, 0) / markStarts.length;
  const spread = Math.hypot(...markStarts.map((start) => (start - mean) / sampleRate));
  return (1e6 * markTimeBound(snrDb)) / spread;
}
