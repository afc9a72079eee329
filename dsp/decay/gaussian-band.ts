import {
  bandEnvelope,
  meanBandPower,
  type Envelope,
  type TransformedResponse,
} from './band-envelope';
import type { Complex } from '../filter/complex';

/** The Gaussian is looked at to so many standard deviations; 78 dB down there. */
const reach = 6 / Math.SQRT2;
/** Times the width of a band gives a rate at which straight lines join its powers well. */
const ratePerWidth = 16;

/**
 * Power along time of a Gaussian band of zero phase round midHz, `widthHz` wide at −3 dB: gain
 * e^(−(f − fm)²/2σ²), σ = widthHz/(2√ln 2). A click becomes a pulse of blurSeconds(widthHz) at half
 * its power, symmetric in time: no filter of that width is finer in time.
 * Throws RangeError for a midpoint or a width that is not positive. Source: Gabor, J. IEE 93 (1946).
 */
export function gaussianEnvelope(
  response: TransformedResponse,
  midHz: number,
  widthHz: number,
): Envelope {
  const { band, gain } = gaussian(midHz, widthHz);
  return bandEnvelope(response, band, gain, ratePerWidth * widthHz);
}

/** Mean square of steady noise in the Gaussian band. Throws as gaussianEnvelope. */
export function gaussianPower(noise: TransformedResponse, midHz: number, widthHz: number): number {
  const { band, gain } = gaussian(midHz, widthHz);
  return meanBandPower(noise, band, gain);
}

/** Full width in time of the pulse a click becomes, at half its power: 2 ln 2/(π·widthHz), s. */
export function blurSeconds(widthHz: number): number {
  return (2 * Math.LN2) / (Math.PI * widthHz);
}

/** Width in Hz of 1/fraction octave round midHz. Throws RangeError for a fraction not positive. */
export function fractionWidthHz(midHz: number, fraction: number): number {
  if (!(fraction > 0)) throw new RangeError(`fraction must be positive, got ${fraction}`);
  return midHz * (2 ** (0.5 / fraction) - 2 ** (-0.5 / fraction));
}

/** Power of an envelope `seconds` after zero delay, on straight lines; 0 outside. */
export function powerAt({ power, sampleRate, zeroIndex }: Envelope, seconds: number): number {
  const index = zeroIndex + seconds * sampleRate;
  const below = Math.floor(index);
  const into = index - below;
  return (power[below] ?? 0) * (1 - into) + (power[below + 1] ?? 0) * into;
}

function gaussian(midHz: number, widthHz: number) {
  if (!(midHz > 0 && widthHz > 0)) {
    throw new RangeError(`midHz and widthHz must be positive, got ${midHz}, ${widthHz}`);
  }
  const sigma = widthHz / (2 * Math.sqrt(Math.LN2));
  const band = [Math.max(0, midHz - reach * sigma), midHz + reach * sigma] as const;
  const gain = (hz: number): Complex => ({
    re: Math.exp(-(((hz - midHz) / sigma) ** 2) / 2),
    im: 0,
  });
  return { band, gain };
}
