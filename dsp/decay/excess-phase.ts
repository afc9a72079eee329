import { advance } from '../fft/advance';
import { nextPowerOfTwo, realSpectrum, type HalfSpectrum } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import { minimumPhase } from '../response/minimum-phase';
import { powerSpectrum } from '../response/power-spectrum';
import { binMean } from './bin-mean';
import { clearOfNoise } from './clear-of-noise';
import { windowResponse, type WindowOptions } from './window-response';

export interface ExcessPhaseOptions extends WindowOptions {
  /** Steady noise that went through the same deconvolution, or null. */
  readonly noise: ImpulseResponse | null;
  /**
   * Where the magnitude is the speaker's, Hz: the sweep's band. Outside it goes on level, so that
   * the sweep's own skirts, which have no phase, ask for none. Left out: everywhere.
   */
  readonly bandHz?: readonly [number, number];
  /** Group delay is a mean over 1/fraction octave, weighted by power; left out: none. */
  readonly fraction?: number;
}

/** Phase that the magnitude does not account for; one entry for each frequency asked for. */
export interface ExcessPhase {
  /** Unwrapped, degrees; between −180 and 180 where the response is strongest; null in the noise. */
  readonly degrees: readonly (number | null)[];
  /** −dφ/dω of it, s after the arrival; null in the noise. */
  readonly groupDelaySeconds: readonly (number | null)[];
}

/** Bins lie at most this far apart. */
const spacingHz = 0.75;
/** Magnitudes count as no smaller than this share of the largest. */
const leastShare = 1e-6;

/**
 * Excess phase at frequencies hz: measured phase minus the minimum phase of the measured magnitude
 * minus the delay of the arrival (s after zero delay). 0 for a minimum-phase speaker; an all-pass
 * or a delay of one band against another shows as itself, an inverted speaker as 180°. Null where
 * the response stands less than 10 dB over the noise. Throws RangeError for spans, a band or a
 * fraction that are not positive. Source: real cepstrum, see minimumPhase; Preis, JAES 30 (1982),
 * for excess phase (from memory).
 */
export function excessPhase(
  ir: ImpulseResponse,
  hz: ArrayLike<number>,
  arrivalSeconds: number,
  options: ExcessPhaseOptions,
): ExcessPhase {
  const { noise, fraction, bandHz = [0, ir.sampleRate / 2] } = options;
  if (!(bandHz[0] >= 0 && bandHz[0] < bandHz[1])) {
    throw new RangeError(`band must be 0 ≤ lowHz < highHz, got ${bandHz[0]}, ${bandHz[1]}`);
  }
  const { samples, sampleRate, zeroIndex } = windowResponse(ir, arrivalSeconds, options);
  const size = nextPowerOfTwo(Math.max(2 * samples.length, sampleRate / spacingHz));
  const hzPerBin = sampleRate / size;
  const spectrum = realSpectrum(samples, size);
  advance(spectrum, zeroIndex + arrivalSeconds * sampleRate, size);
  const power = Float64Array.from({ length: size / 2 + 1 }, (_, k) => {
    return (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
  });
  const phase = unwrapExcess(spectrum, minimumPhase(logMagnitude(power, bandHz, hzPerBin)), power);
  const quiet = noise && windowResponse(noise, arrivalSeconds, options);
  const hiss = quiet && powerSpectrum(quiet, hzPerBin * (1 + 1e-9));
  const clear = clearOfNoise({ hzPerBin, power }, hiss);
  const weighted = (values: (k: number) => number): Float64Array =>
    power.map((weight, k) => weight * values(k));
  const last = size / 2;
  const slope = (k: number): number => {
    const [a, b] = [Math.max(0, k - 1), Math.min(last, k + 1)];
    return ((phase[a] ?? 0) - (phase[b] ?? 0)) / ((b - a) * hzPerBin * 2 * Math.PI);
  };
  const meanPhase = binMean(
    weighted((k) => phase[k] ?? 0),
    power,
    hzPerBin,
  );
  const meanDelay = binMean(weighted(slope), power, hzPerBin, fraction);
  return {
    degrees: Array.from(hz, (each) => (clear(each) ? (meanPhase(each) * 180) / Math.PI : null)),
    groupDelaySeconds: Array.from(hz, (each) => (clear(each) ? meanDelay(each) : null)),
  };
}

/** ln of the magnitude at each bin, level outside the band. */
function logMagnitude(
  power: Float64Array,
  [lowHz, highHz]: readonly [number, number],
  hzPerBin: number,
): Float64Array {
  const low = Math.ceil(lowHz / hzPerBin);
  const high = Math.max(low, Math.min(power.length - 1, Math.floor(highHz / hzPerBin)));
  const largest = power.reduce((most, one) => Math.max(most, one), 0);
  const least = Math.max(leastShare ** 2 * largest, Number.MIN_VALUE);
  return power.map((_, k) => {
    return 0.5 * Math.log(Math.max(power[Math.min(Math.max(k, low), high)] ?? 0, least));
  });
}

/** Phase minus minimum phase, radians, followed bin by bin from the strongest one to both sides. */
function unwrapExcess(
  spectrum: HalfSpectrum,
  minimum: Float64Array,
  power: Float64Array,
): Float64Array {
  const excess = minimum.map((own, k) => {
    return wrap(Math.atan2(spectrum[2 * k + 1] ?? 0, spectrum[2 * k] ?? 0) - own);
  });
  let strongest = 0;
  for (let k = 1; k < power.length; k++) {
    if ((power[k] ?? 0) > (power[strongest] ?? 0)) strongest = k;
  }
  for (const step of [-1, 1]) {
    for (let k = strongest + step; k >= 0 && k < excess.length; k += step) {
      const near = excess[k - step] ?? 0;
      excess[k] = near + wrap((excess[k] ?? 0) - near);
    }
  }
  return excess;
}

/** The same angle between −π and π. */
function wrap(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
