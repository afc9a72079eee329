import { powerSpectrum, type PowerSpectrum } from '../response/power-spectrum';
import type { PeriodReading } from './period-reading';

/**
 * |H|² and the noise in it on a grid of half bins, zero outside the noise's band: the response is
 * taken as dead within its period, so that narrow bands of the bass read as a sweep's do.
 */
export function finePower(reading: PeriodReading): {
  readonly heard: PowerSpectrum;
  readonly hiss: PowerSpectrum;
} {
  const { transfer, noisePower, bandHz } = reading;
  const heard = powerSpectrum(transfer, noisePower.hzPerBin / 2);
  const { hzPerBin } = heard;
  const hiss = heard.power.map((_, k) => noisePower.power[Math.floor(k / 2)] ?? 0);
  for (let k = 0; k < hiss.length; k++) {
    if (k * hzPerBin >= bandHz[0] && k * hzPerBin <= bandHz[1]) continue;
    heard.power[k] = 0;
    hiss[k] = 0;
  }
  return { heard, hiss: { hzPerBin, power: hiss } };
}
