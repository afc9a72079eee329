import { integratePower, type PowerSpectrum } from '../response/power-spectrum';

/** A band counts when it stands so far over the noise. */
const overNoise = 10;
/** Without noise: what is so far below the strongest bin counts as nothing. */
const leastShare = 1e-12;
/** Bands of 1/12 octave are compared, or single bins where those are wider. */
const halfBand = 2 ** (1 / 24);

/**
 * Whether a response's power in 1/12 octave round a frequency stands 10 dB over that of the noise,
 * both on one grid; without noise, whether it is no more than 120 dB below the strongest bin.
 */
export function clearOfNoise(
  heard: PowerSpectrum,
  noise: PowerSpectrum | null,
): (hz: number) => boolean {
  const signal = integratePower(heard);
  const hiss = noise && integratePower(noise);
  const top = (heard.power.length - 1) * heard.hzPerBin;
  const largest = heard.power.reduce((most, one) => Math.max(most, one), 0);
  return (hz) => {
    if (!(hz > 0 && hz <= top)) return false;
    const low = Math.min(hz / halfBand, hz - heard.hzPerBin / 2);
    const high = Math.max(hz * halfBand, hz + heard.hzPerBin / 2);
    const power = signal(high) - signal(low);
    const width = Math.min(high, top) - Math.max(low, 0);
    const least = hiss ? overNoise * (hiss(high) - hiss(low)) : leastShare * largest * width;
    return power > least;
  };
}
