import { msg } from '@lit/localize';
import { realSpectrum } from '../../dsp/fft/fft';
import { amplitudeToDb, powerToDb } from '../../dsp/level/decibels';
import { createFrequencyWeighting } from '../../dsp/level/frequency-weighting';
import { meanSquare } from '../../dsp/level/mean-square';
import { findClipping } from '../../dsp/timing/clipping';
import type { SoundLevelCalibration } from '../microphone/calibration';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { Ear } from './hear-line';
import type { SoundLevel } from './sound-level';
import { createSoundLevelMeter } from './sound-level-meter';

/** What the last two periods of the noise sounded like at the microphone. */
export interface Hearing {
  /** Power in the deciding band over the last period, mean square re full scale. */
  readonly bandPower: number;
  /** Part of it that came again after one period: the noise's own, not the room's. */
  readonly repeatedPower: number;
  /** |Y|² of the last period, bin by bin. */
  readonly spectrum: Float64Array;
  /** Largest sample of the last period. */
  readonly peakDb: number;
  /** Mean level over the last period with C weighting, dB re full scale. */
  readonly cWeightedDb: number;
  /** C and slow. */
  readonly soundLevel: SoundLevel | null;
  /** Peak at the converter's end, or flat tops, in the last quarter. */
  readonly clipped: boolean;
}

export interface ClimbEar {
  readonly periodSamples: number;
  /** Seconds between two hearings. */
  readonly hopSeconds: number;
  /** Listens on for a quarter of a period. */
  listen(): Promise<Hearing | Trouble>;
}

const hopsAPeriod = 4;
/** Peaks from here on count as clipping, dB re full scale. */
const clipDb = -1;
/** Flat tops below this are a coarse converter, not clipping. */
const leastCeiling = 0.05;
/** Audio lost so often before two periods were whole. */
const mostLosses = 10;
const lossy = () =>
  trouble(
    'failed',
    msg('Audio is lost so often that no level can be read. Close other programs and start again.'),
  );
/** Bins over which a skewed clock turns all phases alike. */
const groupBins = 64;

export interface ClimbEarOptions {
  readonly periodSamples: number;
  readonly bandHz: readonly [number, number];
  readonly soundLevel: SoundLevelCalibration | null;
  readonly onLevel?: ((aWeightedDb: number, seconds: number) => void) | undefined;
}

/**
 * Hears a line in steps of a quarter of the noise's period. After lost audio it listens until two
 * periods are whole again.
 */
export function createClimbEar(ear: Ear, options: ClimbEarOptions): ClimbEar {
  const { periodSamples } = options;
  const { sampleRate } = ear.line;
  const hop = periodSamples / hopsAPeriod;
  const meter = createSoundLevelMeter(sampleRate, options.soundLevel);
  meter.set('C', 'slow');
  const weighC = createFrequencyWeighting('C', sampleRate);
  const bins = options.bandHz.map((hz) => Math.round((hz * periodSamples) / sampleRate));
  const [firstBin = 0, lastBin = 0] = bins;
  const past = new Float64Array(periodSamples);
  /** Spectra of the last period at each hop; the first of five is that of the period before. */
  const spectra: Float64Array[] = [];
  const cPowers: number[] = [];

  let gaps = 0;

  const listen = async (): Promise<Hearing | Trouble> => {
    let wait = 0;
    for (let losses = 0; losses <= mostLosses;) {
      const hearing = await listenOnce();
      if (isTrouble(hearing)) return hearing;
      if (ear.gaps() !== gaps) {
        gaps = ear.gaps();
        losses++;
        wait = 2 * hopsAPeriod;
      }
      if (wait === 0 || hearing.clipped) return hearing;
      wait--;
    }
    return lossy();
  };

  const listenOnce = async (): Promise<Hearing | Trouble> => {
    const heard = await ear.hear(hop);
    if (isTrouble(heard)) return heard;
    past.copyWithin(0, hop);
    past.set(heard, past.length - hop);
    meter.push(heard);
    options.onLevel?.(meter.aWeightedDb(), hop / sampleRate);
    cPowers.push(meanSquare(weighC(heard)));
    if (cPowers.length > hopsAPeriod) cPowers.shift();
    const last = realSpectrum(past, periodSamples);
    spectra.push(last);
    const before = spectra.length > hopsAPeriod ? spectra.shift() : undefined;
    const scale = 2 / periodSamples ** 2;
    return {
      bandPower: scale * bandSum(last, last, firstBin, lastBin),
      repeatedPower: before ? scale * bandSum(before, last, firstBin, lastBin) : 0,
      spectrum: powers(last, scale),
      peakDb: amplitudeToDb(peakOf(past)),
      cWeightedDb: powerToDb(cPowers.reduce((sum, p) => sum + p, 0) / cPowers.length),
      soundLevel: meter.read(),
      clipped: isClipped(heard),
    };
  };
  return { periodSamples, hopSeconds: hop / sampleRate, listen };
}

/** Σ over groups of bins of |Σ x·conj(y)|: only what both have in common adds up. */
function bandSum(x: Float64Array, y: Float64Array, first: number, last: number): number {
  let sum = 0;
  for (let from = first; from <= last; from += groupBins) {
    let re = 0;
    let im = 0;
    for (let k = from; k <= Math.min(from + groupBins - 1, last); k++) {
      const [a, b] = [x[2 * k] ?? 0, x[2 * k + 1] ?? 0];
      const [c, d] = [y[2 * k] ?? 0, y[2 * k + 1] ?? 0];
      re += a * c + b * d;
      im += b * c - a * d;
    }
    sum += Math.hypot(re, im);
  }
  return sum;
}

function powers(spectrum: Float64Array, scale: number): Float64Array {
  return Float64Array.from({ length: spectrum.length / 2 }, (_, k) => {
    return scale * ((spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2);
  });
}

function isClipped(samples: Float64Array): boolean {
  if (amplitudeToDb(peakOf(samples)) >= clipDb) return true;
  const clipping = findClipping(samples, 0, samples.length);
  return clipping !== null && clipping.ceiling >= leastCeiling;
}

function peakOf(samples: Float64Array): number {
  let peak = 0;
  for (const x of samples) peak = Math.max(peak, Math.abs(x));
  return peak;
}
