import { fadeGain } from './fade';

/** Exponential sweep from startHz to endHz; lengths and fades in samples. */
export interface SweepSpec {
  readonly startHz: number;
  readonly endHz: number;
  readonly lengthSamples: number;
  readonly sampleRate: number;
  readonly fadeInSamples: number;
  readonly fadeOutSamples: number;
}

/** The sweep passes this part of an octave at each end while it fades. */
const fadeInOctaves = 1 / 4;
const fadeOutOctaves = 1 / 12;

/**
 * A sweep whose harmonics keep their phase: L·startHz is whole. startHz moves down (up only when
 * L·startHz would fall below 1) until it is; endHz and the length stay, because near the top a
 * whole step of L·startHz can be more than an octave. Throws RangeError outside 0 < start < end ≤ half the rate.
 * Source: Novak, Lotton and Simon, JAES 63 (2015), synchronised swept sine.
 */
export function synchronisedSweep(
  startHz: number,
  endHz: number,
  lengthSamples: number,
  sampleRate: number,
): SweepSpec {
  checkBand(startHz, endHz, lengthSamples, sampleRate);
  const seconds = lengthSamples / sampleRate;
  const turns = (hz: number): number => (hz * seconds) / Math.log(endHz / hz);
  const whole = Math.max(1, Math.floor(turns(startHz) + 1e-9));
  const start = solveIncreasing(turns, whole, endHz);
  const octaveSamples = (lengthSamples * Math.LN2) / Math.log(endHz / start);
  return {
    startHz: start,
    endHz,
    lengthSamples,
    sampleRate,
    fadeInSamples: Math.min(Math.round(octaveSamples * fadeInOctaves), lengthSamples >> 1),
    fadeOutSamples: Math.min(Math.round(octaveSamples * fadeOutOctaves), lengthSamples >> 1),
  };
}

/**
 * L = T/ln(f2/f1) in seconds: the sweep's frequency rises by e in this time, and harmonic k
 * arrives L·ln k before the linear response.
 */
export function sweepRateSeconds(spec: SweepSpec): number {
  return spec.lengthSamples / spec.sampleRate / Math.log(spec.endHz / spec.startHz);
}

/** Seconds after its start at which the sweep passes `hz`; f(t) = f1·e^(t/L). */
export function sweepTimeSeconds(spec: SweepSpec, hz: number): number {
  return sweepRateSeconds(spec) * Math.log(hz / spec.startHz);
}

/**
 * Samples of the sweep, x(t) = sin(2π f1 L (e^(t/L) − 1)), peak 1, faded at both ends. With
 * `stretch` other than 1 the same sound as a clock sees it that counts so many samples for one of
 * the sweep's. Throws RangeError outside 0 < start < end ≤ half the rate and for a stretch that is
 * not positive. Source: Farina, AES 108 (2000).
 */
export function sweepSignal(spec: SweepSpec, stretch = 1): Float64Array {
  const { startHz, endHz, lengthSamples, sampleRate, fadeInSamples, fadeOutSamples } = spec;
  checkBand(startHz, endHz, lengthSamples, sampleRate);
  if (!(stretch > 0 && stretch < Infinity)) {
    throw new RangeError(`stretch must be positive, got ${stretch}`);
  }
  const rate = sweepRateSeconds(spec);
  const signal = new Float64Array(Math.floor((lengthSamples - 1) * stretch) + 1);
  const last = lengthSamples - 1;
  for (let n = 0; n < signal.length; n++) {
    const at = n / stretch;
    const turns = startHz * rate * Math.expm1(at / sampleRate / rate);
    let value = Math.sin(2 * Math.PI * (turns % 1));
    if (at < fadeInSamples) value *= fadeGain(at, fadeInSamples);
    if (last - at < fadeOutSamples) value *= fadeGain(last - at, fadeOutSamples);
    signal[n] = value;
  }
  return signal;
}

function checkBand(startHz: number, endHz: number, length: number, sampleRate: number): void {
  if (!(startHz > 0 && startHz < endHz && endHz <= sampleRate / 2 && sampleRate < Infinity)) {
    throw new RangeError(
      `a sweep needs 0 < startHz < endHz ≤ ${sampleRate / 2}, got ${startHz}, ${endHz}`,
    );
  }
  if (!Number.isInteger(length) || length < 2) {
    throw new RangeError(`lengthSamples must be whole and at least 2, got ${length}`);
  }
}

/** Solves value(hz) = target by bisection in log frequency; value rises from 0 to ∞ at endHz. */
function solveIncreasing(value: (hz: number) => number, target: number, endHz: number): number {
  let low = 1e-6 * endHz;
  let high = endHz;
  while (value(low) > target) low /= 16;
  for (let step = 0; step < 100; step++) {
    const middle = Math.sqrt(low * high);
    if (value(middle) < target) low = middle;
    else high = middle;
  }
  return low;
}
