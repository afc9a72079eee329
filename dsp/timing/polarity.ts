import type { ImpulseResponse } from '../response/impulse-response';
import { scratch } from '../signal/scratch';
import { analyticBand } from './analytic-band';
import type { Arrival } from './arrival';

/** Polarity of a speaker with its grounds. */
export interface PolarityReading {
  readonly polarity: 'normal' | 'inverted' | 'cannot tell';
  /** What decided, or the first thing that forbade a decision. */
  readonly ground: 'both agree' | 'too noisy' | 'phase unclear' | 'signs differ' | 'too narrow';
  /** Sign of the largest 300 to 3000 Hz sample around the arrival. */
  readonly peakSign: 1 | -1;
  /** Weighted mean of the cosine of the phase at the arrival, 200 to 1500 Hz, −1 … 1. */
  readonly phase: number;
}

const peakBandHz = [300, 3000] as const;
const peakSeconds = [-0.3e-3, 0.6e-3] as const;
const phaseBandHz = [200, 1500] as const;
const phaseSeconds = 0.006;
/** The window is 1 from here before the arrival on: half of the first pulse lies there. */
const leadSeconds = 0.3e-3;
/** A crossover delays the middle against the treble, which sets the arrival, by up to so much. */
const latestSeconds = 0.2e-3;
const phaseStepSeconds = 10e-6;
const leastPhase = 0.25;
const leastPeakToNoiseDb = 30;
const room = scratch();

/**
 * Polarity from the first milliseconds. Decided only if the sign of the largest 300 to 3000 Hz
 * sample from 0.3 ms before to 0.6 ms after the arrival is that of the mean phase
 * P = Σ w cos∠X / Σ w (half a Hann window of 6 ms from the arrival on, w = |X|/√f, 200 to
 * 1500 Hz; phase at the arrival or up to 0.2 ms later, wherever |P| is largest), |P| > 0.25, the
 * response's peak stands 30 dB over its noise, and the arrival was read in the treble. Common
 * practice; limits from simulated rooms.
 */
export function readPolarity(ir: ImpulseResponse, arrival: Arrival): PolarityReading {
  const peakSign = signAround(ir, arrival.index);
  const phase = meanPhase(ir, arrival.index);
  const reading = { polarity: 'cannot tell', peakSign, phase } as const;
  if (arrival.bandAdapted) return { ...reading, ground: 'too narrow' };
  if (arrival.peakToNoiseDb < leastPeakToNoiseDb) return { ...reading, ground: 'too noisy' };
  if (!(Math.abs(phase) > leastPhase)) return { ...reading, ground: 'phase unclear' };
  if (Math.sign(phase) !== peakSign) return { ...reading, ground: 'signs differ' };
  const polarity = peakSign > 0 ? 'normal' : 'inverted';
  return { polarity, ground: 'both agree', peakSign, phase };
}

function signAround({ samples, sampleRate }: ImpulseResponse, index: number): 1 | -1 {
  const reach = Math.round(0.03 * sampleRate);
  const from = Math.max(0, Math.round(index) - reach);
  const piece = samples.slice(from, Math.round(index) + reach);
  const [low, high] = peakBandHz;
  const band = analyticBand(piece, sampleRate, low, high, room);
  const start = Math.round(index - from + peakSeconds[0] * sampleRate);
  const end = Math.round(index - from + peakSeconds[1] * sampleRate);
  let largest = 0;
  for (let n = start; n <= end; n++) {
    const value = band[2 * n] ?? 0;
    if (Math.abs(value) > Math.abs(largest)) largest = value;
  }
  return largest < 0 ? -1 : 1;
}

/** P with the phase taken where |P| is largest, from the arrival to a crossover's delay after it. */
function meanPhase(ir: ImpulseResponse, index: number): number {
  const bins = windowedSpectrum(ir, index);
  let best = 0;
  for (let seconds = 0; seconds <= latestSeconds; seconds += phaseStepSeconds) {
    let sum = 0;
    let weights = 0;
    for (const { hz, re, im } of bins) {
      const angle = 2 * Math.PI * hz * seconds;
      const weight = 1 / Math.sqrt(hz);
      sum += weight * (re * Math.cos(angle) - im * Math.sin(angle));
      weights += weight * Math.hypot(re, im);
    }
    const phase = weights > 0 ? sum / weights : 0;
    if (Math.abs(phase) > Math.abs(best)) best = phase;
  }
  return best;
}

function windowedSpectrum({ samples, sampleRate }: ImpulseResponse, index: number) {
  const length = Math.round(phaseSeconds * sampleRate);
  const lead = Math.round(leadSeconds * sampleRate);
  const from = Math.round(index);
  const piece = Float64Array.from({ length: lead + length }, (_, at) => {
    const window = 0.5 * (1 + Math.cos((Math.PI * Math.max(0, at - lead)) / length));
    return (samples[from - lead + at] ?? 0) * window;
  });
  const bins: { hz: number; re: number; im: number }[] = [];
  for (let hz = phaseBandHz[0]; hz <= phaseBandHz[1]; hz += 1 / (4 * phaseSeconds)) {
    let re = 0;
    let im = 0;
    const step = (-2 * Math.PI * hz) / sampleRate;
    const [turnCos, turnSin] = [Math.cos(step), Math.sin(step)];
    let cos = Math.cos(step * (from - lead - index));
    let sin = Math.sin(step * (from - lead - index));
    for (const value of piece) {
      re += value * cos;
      im += value * sin;
      [cos, sin] = [cos * turnCos - sin * turnSin, sin * turnCos + cos * turnSin];
    }
    bins.push({ hz, re, im });
  }
  return bins;
}
