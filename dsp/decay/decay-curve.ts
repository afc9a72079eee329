import type { Envelope } from './band-envelope';
import type { Knee } from './find-knee';

/** Backward-integrated decay of a band. Energies are shares of the band's whole energy. */
export interface DecayCurve {
  /** Seconds from one point to the next; the first stands at the arrival. */
  readonly stepSeconds: number;
  /** Energy still to come, falling; below 1 at first by what came before the arrival. */
  readonly remaining: Float64Array;
  /** Seconds after the arrival where the integration ends. */
  readonly kneeSeconds: number;
  /** Power of the noise, of the whole energy a second. */
  readonly noise: number;
  /** Its standard deviation as a share of it. */
  readonly noiseError: number;
  /** What was added for the decay beyond the knee. */
  readonly added: number;
  /** Time in which the late decay loses 60 dB, s. */
  readonly lateSeconds: number;
  /** How far the decay starts above what ends it, dB: 10 log(k/N), k the late decay's rate. */
  readonly rangeDb: number;
  /** What ends it: the noise, or the end of the record. */
  readonly endedBy: 'noise' | 'record';
}

const mostPoints = 400;

/**
 * Energy still to come after each moment, E(t) = ∫ₜ^tc (p − N) dt + A/k: p the power of the band, N
 * the noise, tc the knee, A and k power and rate of the late decay there. Up to 400 points from
 * `arrival` (index in the envelope) to the knee; the whole energy counts from `lead` samples before
 * it. Null when nothing is left above the noise.
 * Source: Schroeder, JASA 37 (1965); Chu, JASA 63 (1978), for the subtraction; Lundeby et al.,
 * Acustica 81 (1995), for the energy beyond the knee (all from memory).
 */
export function integrateDecay(
  { power, sampleRate }: Envelope,
  arrival: number,
  lead: number,
  knee: Knee,
): DecayCurve | null {
  // Each power stands from half a sample before to half a sample after its index.
  const sums = new Float64Array(power.length + 1);
  for (let n = 0; n < power.length; n++) {
    sums[n + 1] = (sums[n] ?? 0) + (power[n] ?? 0) - knee.noise;
  }
  const sumTo = (index: number): number => {
    const place = Math.min(Math.max(index + 0.5, 0), power.length);
    const whole = Math.min(Math.floor(place), power.length - 1);
    const step = (sums[whole + 1] ?? 0) - (sums[whole] ?? 0);
    return (sums[whole] ?? 0) + (place - whole) * step;
  };
  const added = knee.power / knee.rate;
  const end = sumTo(knee.at);
  const remainingAt = (index: number): number => (end - sumTo(index)) / sampleRate + added;
  const total = remainingAt(arrival - lead);
  const span = knee.at - arrival;
  if (!(total > 0 && span > 0)) return null;
  const count = Math.max(2, Math.min(mostPoints, Math.ceil(4 * span)));
  const step = span / count;
  const all = Float64Array.from({ length: count + 1 }, (_, n) => {
    return remainingAt(arrival + n * step) / total;
  });
  const gone = all.findIndex((value) => !(value > 0));
  const floor = Math.max(knee.noise, knee.reached ? 0 : knee.power);
  return {
    stepSeconds: step / sampleRate,
    remaining: gone < 0 ? all : all.slice(0, gone),
    kneeSeconds: span / sampleRate,
    noise: knee.noise / total,
    noiseError: knee.noiseError,
    added: added / total,
    lateSeconds: (6 * Math.LN10) / knee.rate,
    rangeDb: 10 * Math.log10((knee.rate * total) / floor),
    endedBy: knee.reached ? 'noise' : 'record',
  };
}
