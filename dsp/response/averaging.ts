import { integratePower, type PowerSpectrum } from './power-spectrum';

/**
 * Mean of the powers of several responses, bin by bin. With `reference` [lowHz, highHz] each is
 * first divided by its own mean power there, so that a near seat counts no more than a far one.
 * Throws RangeError when the list is empty, the grids differ, or the reference holds no power.
 */
export function averagePower(
  spectra: readonly PowerSpectrum[],
  reference?: readonly [number, number],
): PowerSpectrum {
  const first = spectra[0];
  if (!first) throw new RangeError('averagePower needs at least one spectrum, got 0');
  const mean = new Float64Array(first.power.length);
  for (const spectrum of spectra) {
    if (spectrum.hzPerBin !== first.hzPerBin || spectrum.power.length !== mean.length) {
      throw new RangeError(
        `spectra must share one grid of ${first.hzPerBin} Hz, got ${spectrum.hzPerBin}`,
      );
    }
    const scale = 1 / (spectra.length * (reference ? meanPower(spectrum, reference) : 1));
    for (let k = 0; k < mean.length; k++) {
      mean[k] = (mean[k] ?? 0) + scale * (spectrum.power[k] ?? 0);
    }
  }
  return { hzPerBin: first.hzPerBin, power: mean };
}

function meanPower(spectrum: PowerSpectrum, [lowHz, highHz]: readonly [number, number]): number {
  const integral = integratePower(spectrum);
  const mean = (integral(highHz) - integral(lowHz)) / (highHz - lowHz);
  if (!(mean > 0)) throw new RangeError(`no power from ${lowHz} to ${highHz} Hz, got ${mean}`);
  return mean;
}
