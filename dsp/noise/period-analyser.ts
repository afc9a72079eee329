import { realSpectrum } from '../fft/fft';
import { readBetween } from '../timing/resample';
import { createCaptureWindow } from './capture-window';
import { createDriftLine } from './drift-line';
import { createPeriodAverage } from './period-average';
import { advancePeriod, anyDelay, nearDelay, type PeriodBins } from './period-delay';
import { createPeriodPool } from './period-pool';
import { readPeriods, type PeriodReading } from './period-reading';

export interface PeriodAnalyserOptions {
  /** Periods averaged at most; beyond, the oldest fade away. Default: all. */
  readonly mostPeriods?: number;
  /** Samples ignored after a start or a change; default a period and half a second. */
  readonly warmUpSamples?: number;
}

/** Live analysis of periodic noise at a microphone. */
export interface PeriodAnalyser {
  /** The next stretch of the capture, any length. */
  push(samples: ArrayLike<number>): void;
  /** So many frames were lost here; whole and not negative. */
  gap(frames: number): void;
  /** What plays changed: everything starts over after the warm-up. */
  restart(): void;
  /** Gain of what plays, dB: the shape is kept unless it rises by over 3 dB, the level starts over. */
  setGain(gainDb: number): void;
  setMost(periods: number): void;
  /** Null until two whole periods were heard. */
  read(): PeriodReading | null;
  /** Periods averaged, dropped and whether the average began anew by itself; cheap. */
  progress(): PeriodProgress;
}

export interface PeriodProgress {
  /** Periods heard since the start, those left out too; rises with each. */
  readonly taken: number;
  /** Periods in the average, at most its limit. */
  readonly periods: number;
  /** How often audio was lost or repeated. */
  readonly lost: number;
  /** Left out because something else was heard. */
  readonly disturbed: number;
  /** How often what is heard changed for good, so that the average began anew. */
  readonly renewed: number;
}

/** Clocks differ by at most this. */
const mostDriftPpm = 400;
/** Samples beside a period that resampling reads. */
const margin = 128;
/** A match below this share of the usual one makes it look for lost audio. */
const poorMatch = 0.9;
const settleSeconds = 0.5;

/**
 * Cuts a capture into periods of the noise that plays, wherever it starts; takes the difference of
 * the two clocks out (±400 ppm, from the delay between successive periods) and averages spectra.
 * Periods with lost audio or a disturbance are left out, and the rest realigned. Throws RangeError
 * for a period that is silent or whose length is no power of two of at least 1024.
 * Method: phase advance of multisine periods, common practice.
 */
export function createPeriodAnalyser(
  period: Float64Array,
  sampleRate: number,
  options: PeriodAnalyserOptions = {},
): PeriodAnalyser {
  const size = period.length;
  if (size < 1024) throw new RangeError(`a period needs at least 1024 samples, got ${size}`);
  const played = realSpectrum(period, size);
  const bins: PeriodBins = activeBins(played, size);
  const warmUp = options.warmUpSamples ?? size + Math.round(settleSeconds * sampleRate);
  const significant = 6 / Math.sqrt(effectiveBins(played, bins));
  const window = createCaptureWindow(3 * size + 4 * margin);
  const average = createPeriodAverage(bins.last + 1, options.mostPeriods ?? Infinity);
  const pool = createPeriodPool(average, bins);
  let line = createDriftLine();
  /** Capture frames a stimulus sample; null until known. */
  let ratio: number | null = null;
  /** Capture frame where the next period begins, and its number. */
  let next = margin;
  let index = 0;
  let gain = 1;
  let lost = 0;
  let taken = 0;
  let usualMatch: number | null = null;

  const spectrumAt = (from: number, step: number): Float64Array => {
    const heard = readBetween(window.held(), from - window.start, step, size);
    const spectrum = realSpectrum(heard, size).subarray(0, 2 * bins.last + 2);
    for (let n = 0; n < spectrum.length; n++) spectrum[n] = (spectrum[n] ?? 0) / gain;
    return spectrum;
  };

  /** Skips what is not to be heard: the next period begins `frames` from the window's end on. */
  const wait = (frames: number, whole: boolean): void => {
    const from = window.end + frames + margin;
    const length = size * (ratio ?? 1);
    const periods = Math.max(Math.ceil((from - next) / length), 0);
    next = whole && ratio !== null ? next + periods * length : from;
    index += periods;
  };

  const learnDrift = (): boolean => {
    if (window.end < next + 2 * size + margin) return false;
    const reach = (mostDriftPpm / 1e6) * size + 2;
    const one = spectrumAt(next, 1);
    const coarse = anyDelay(spectrumAt(next + size, 1), one, bins, reach);
    let step = 1 + coarse.samples / size;
    if (window.end < next + 2 * size * step + margin) step = 1;
    const first = spectrumAt(next, step);
    const fine = nearDelay(spectrumAt(next + size * step, step), first, bins);
    if (Math.abs(fine.samples) < 2) step += fine.samples / size;
    ratio = Math.abs(step - 1) <= mostDriftPpm / 1e6 ? step : 1;
    line = createDriftLine();
    return true;
  };

  const takePeriod = (step: number): boolean => {
    if (window.end < next + size * step + margin) return false;
    const spectrum = spectrumAt(next, step);
    const reference = pool.reference();
    let shift = reference ? nearDelay(spectrum, reference, bins) : { samples: 0, match: 1 };
    let jumped = false;
    if (
      reference &&
      !(Math.abs(shift.samples) < 2 && shift.match > poorMatch * (usualMatch ?? 1))
    ) {
      const far = anyDelay(spectrum, reference, bins, size);
      if (Math.abs(far.samples) > 2 && far.match > Math.max(1.1 * shift.match, significant)) {
        jumped = true;
        const turned = spectrum.slice();
        advancePeriod(turned, far.samples, bins);
        const fine = nearDelay(turned, reference, bins);
        shift = { samples: far.samples + fine.samples, match: fine.match };
      } else if (!(Math.abs(shift.samples) < 2)) shift = { samples: 0, match: 0 };
    }
    if (jumped) {
      line.breakLine();
      pool.blameLoss();
    }
    advancePeriod(spectrum, shift.samples, bins);
    const outcome = pool.add(spectrum, jumped);
    if (jumped) lost++;
    if (outcome === 'good') {
      usualMatch =
        usualMatch === null || !reference ? shift.match : 0.8 * usualMatch + 0.2 * shift.match;
      if (!reference) usualMatch = null;
      next += shift.samples * step;
      line.add(index, next);
      const slope = line.slope();
      if (slope !== null && Math.abs(slope / size - 1) <= mostDriftPpm / 1e6) ratio = slope / size;
    } else if (outcome === 'renewed') {
      usualMatch = null;
      ratio = null;
    } else if (jumped) next += shift.samples * step;
    next += size * (ratio ?? 1);
    index++;
    taken++;
    window.forget(next - margin - size / 2);
    return true;
  };

  const work = (): void => {
    for (;;) {
      if (next - margin > window.end) window.forget(window.end);
      else window.forget(next - margin - size / 2);
      if (ratio === null && !learnDrift()) return;
      if (ratio !== null && !takePeriod(ratio)) return;
    }
  };

  const restart = (): void => {
    pool.clear();
    ratio = null;
    usualMatch = null;
    lost = 0;
    wait(warmUp, false);
  };
  wait(warmUp, false);
  return {
    push(samples) {
      for (let at = 0; at < samples.length;) {
        const count = window.append(samples, at);
        at += count;
        work();
      }
    },
    gap(frames) {
      if (!Number.isInteger(frames) || frames < 0) {
        throw new RangeError(`lost frames must be whole and not negative, got ${frames}`);
      }
      const began = window.end > next;
      window.skip(frames);
      if (began) lost++;
      wait(0, true);
    },
    restart,
    setGain(gainDb) {
      if (!Number.isFinite(gainDb)) throw new RangeError(`gainDb must be finite, got ${gainDb}`);
      const next = 10 ** (gainDb / 20);
      pool.changeGain(20 * Math.log10(next / gain));
      gain = next;
      usualMatch = null;
      wait(warmUp, true);
    },
    setMost: (periods) => average.setMost(periods),
    progress: () => ({
      taken,
      periods: average.weight,
      lost,
      disturbed: pool.disturbed,
      renewed: pool.renewed,
    }),
    read() {
      if (average.count < 1.5) return null;
      return readPeriods({
        average,
        played,
        bins,
        sampleRate,
        gain,
        levelShiftDb: pool.levelShiftDb(),
        lost,
        disturbed: pool.disturbed,
        driftPpm: ((ratio ?? 1) - 1) * 1e6,
      });
    },
  };
}

/** Bins within 80 dB of the strongest. */
function activeBins(played: Float64Array, size: number): PeriodBins {
  const power = (k: number): number => (played[2 * k] ?? 0) ** 2 + (played[2 * k + 1] ?? 0) ** 2;
  let most = 0;
  for (let k = 1; k < size / 2; k++) most = Math.max(most, power(k));
  if (!(most > 0 && most < Infinity)) throw new RangeError('a period must hold sound, got none');
  let first = 1;
  let last = size / 2 - 1;
  while (power(first) < 1e-8 * most) first++;
  while (power(last) < 1e-8 * most) last--;
  return { size, first, last };
}

/** How many equal bins would carry this power: what a chance match is judged by. */
function effectiveBins(played: Float64Array, { first, last }: PeriodBins): number {
  let sum = 0;
  let squares = 0;
  for (let k = first; k <= last; k++) {
    const power = (played[2 * k] ?? 0) ** 2 + (played[2 * k + 1] ?? 0) ** 2;
    sum += power;
    squares += power * power;
  }
  return (sum * sum) / squares;
}
