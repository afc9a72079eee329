import { realSignal } from '../fft/fft';
import type { ImpulseResponse } from '../response/impulse-response';
import type { PowerSpectrum } from '../response/power-spectrum';
import { seededRandom } from '../signal/random';
import type { PeriodAverage } from './period-average';
import { advancePeriod, type PeriodBins } from './period-delay';

/** What was read of a speaker from whole periods of noise. Spectra are 0 outside the noise's band. */
export interface PeriodReading {
  /** Effective number of periods averaged. */
  readonly periods: number;
  /** Periods left out, for both reasons. */
  readonly dropped: number;
  readonly lost: number;
  readonly disturbed: number;
  /** captured sample = played sample × (1 + driftPpm·10⁻⁶). */
  readonly driftPpm: number;
  /** Limits of the noise's band, Hz. */
  readonly bandHz: readonly [number, number];
  /** H = Y/X, a circle of one period, its largest sample at zeroIndex; fades beyond the band. */
  readonly transfer: ImpulseResponse;
  /** As much noise as is left in `transfer`; outside the band as strong as the signal at its ends. */
  readonly noise: ImpulseResponse;
  /** |H|² and the noise left in it, per bin. */
  readonly power: PowerSpectrum;
  readonly noisePower: PowerSpectrum;
  /** S²/(S² + N²) per bin, unbiased, 0 … 1. */
  readonly coherence: Float64Array;
  /** Mean square of the noise's sound and of everything else at the microphone, per bin. */
  readonly heard: PowerSpectrum;
  readonly hiss: PowerSpectrum;
  /** Level of the band at the microphone, the noise in it included, dB re full scale. */
  readonly bandLevelDb: number;
  /** What the level since the last change of gain differs from that of the whole average, dB. */
  readonly levelShiftDb: number;
}

export interface PeriodSums {
  readonly average: PeriodAverage;
  /** Spectrum of the period as it is played at gain 1. */
  readonly played: Float64Array;
  readonly bins: PeriodBins;
  readonly sampleRate: number;
  readonly gain: number;
  readonly levelShiftDb: number;
  readonly lost: number;
  readonly disturbed: number;
  readonly driftPpm: number;
}

/** Response before its largest sample, seconds; as much as reading a roll-off asks for. */
const preSeconds = 0.11;

/** Turns averaged spectra into a reading; sources: see createPeriodAnalyser. */
export function readPeriods(sums: PeriodSums): PeriodReading {
  const { average, played, bins, sampleRate, gain } = sums;
  const { size, first, last } = bins;
  const half = size / 2 + 1;
  const hzPerBin = sampleRate / size;
  const variance = average.variance();
  const { mean, count } = average;
  const power = new Float64Array(half);
  const noisePower = new Float64Array(half);
  const coherence = new Float64Array(half);
  const heard = new Float64Array(half);
  const hiss = new Float64Array(half);
  const transfer = new Float64Array(size + 2);
  /** Mean square of a bin from its |Y|², both halves of the spectrum. */
  const square = (2 * gain * gain) / (size * size);
  let bandSquare = 0;
  for (let k = first; k <= last; k++) {
    const xr = played[2 * k] ?? 0;
    const xi = played[2 * k + 1] ?? 0;
    const yr = mean[2 * k] ?? 0;
    const yi = mean[2 * k + 1] ?? 0;
    const x = xr * xr + xi * xi;
    if (!(x > 0)) continue;
    const y = yr * yr + yi * yi;
    const single = variance[k] ?? 0;
    const left = single / count;
    const own = Math.max(y - left, 0);
    transfer[2 * k] = (yr * xr + yi * xi) / x;
    transfer[2 * k + 1] = (yi * xr - yr * xi) / x;
    power[k] = y / x;
    noisePower[k] = left / x;
    coherence[k] = own + single > 0 ? own / (own + single) : 0;
    heard[k] = own * square;
    hiss[k] = single * square;
    bandSquare += (own + single) * square;
  }
  const { turned, zeroIndex } = turnToPeak(transfer, bins, sampleRate);
  return {
    periods: count,
    dropped: sums.lost + sums.disturbed,
    lost: sums.lost,
    disturbed: sums.disturbed,
    driftPpm: sums.driftPpm,
    bandHz: [first * hzPerBin, last * hzPerBin],
    transfer: { samples: turned, sampleRate, zeroIndex },
    noise: { samples: noiseSignal(power, noisePower, bins), sampleRate, zeroIndex },
    power: { hzPerBin, power },
    noisePower: { hzPerBin, power: noisePower },
    coherence,
    heard: { hzPerBin, power: heard },
    hiss: { hzPerBin, power: hiss },
    bandLevelDb: 10 * Math.log10(Math.max(bandSquare, 1e-30)) + sums.levelShiftDb,
    levelShiftDb: sums.levelShiftDb,
  };
}

/**
 * Circular response whose largest sample stands 0.11 s after its start. Beyond the ends of the band
 * the transfer fades from its last value, so that no edge rings through the period.
 */
function turnToPeak(
  transfer: Float64Array,
  bins: PeriodBins,
  sampleRate: number,
): { readonly turned: Float64Array; readonly zeroIndex: number } {
  const { size } = bins;
  let peak = 0;
  const circle = realSignal(transfer, size);
  circle.forEach((value, n) => {
    if (Math.abs(value) > Math.abs(circle[peak] ?? 0)) peak = n;
  });
  advancePeriod(transfer, peak, bins);
  fadeBeyond(transfer, bins);
  const still = realSignal(transfer, size);
  const zeroIndex = Math.min(Math.round(preSeconds * sampleRate), size - 1);
  const turned = new Float64Array(size);
  turned.set(still.subarray(0, size - zeroIndex), zeroIndex);
  turned.set(still.subarray(size - zeroIndex), 0);
  return { turned, zeroIndex };
}

/** Half a raised cosine down to half the first and up to 1.2 times the last bin. */
function fadeBeyond(transfer: Float64Array, { size, first, last }: PeriodBins): void {
  const continueFrom = (edge: number, k: number, along: number): void => {
    const share = 0.5 * (1 + Math.cos(Math.PI * along));
    transfer[2 * k] = share * (transfer[2 * edge] ?? 0);
    transfer[2 * k + 1] = share * (transfer[2 * edge + 1] ?? 0);
  };
  const low = Math.floor(first / 2);
  for (let k = low + 1; k < first; k++) continueFrom(first, k, (first - k) / (first - low));
  const high = Math.min(Math.ceil(1.2 * last), size / 2 - 1);
  for (let k = last + 1; k < high; k++) continueFrom(last, k, (k - last) / (high - last));
}

/** A signal of that power per bin, its phases random from a fixed seed. */
function noiseSignal(
  power: Float64Array,
  noisePower: Float64Array,
  { size, first, last }: PeriodBins,
): Float64Array {
  const random = seededRandom(1);
  const spectrum = new Float64Array(size + 2);
  const below = meanOf(power, first, Math.min(2 * first, last));
  const above = meanOf(power, Math.max(Math.floor(last / 1.2), first), last);
  for (let k = 1; k < size / 2; k++) {
    const own = k < first ? below : k > last ? above : (noisePower[k] ?? 0);
    const magnitude = Math.sqrt(own);
    const phase = 2 * Math.PI * random();
    spectrum[2 * k] = magnitude * Math.cos(phase);
    spectrum[2 * k + 1] = magnitude * Math.sin(phase);
  }
  return realSignal(spectrum, size);
}

function meanOf(power: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let k = from; k <= to; k++) sum += power[k] ?? 0;
  return sum / (to - from + 1);
}
