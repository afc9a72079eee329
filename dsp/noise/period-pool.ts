import { bandDistances, bandPowers, isDisturbed, judgeBands, sortOut } from './judge-bands';
import type { PeriodAverage } from './period-average';
import type { PeriodBins } from './period-delay';

export type PeriodOutcome = 'good' | 'left out' | 'renewed';

/** Periods on their way into an average; those that stand apart are left out. */
export interface PeriodPool {
  readonly disturbed: number;
  readonly renewed: number;
  /** What the next period is compared with; null when there is nothing. */
  reference(): Float64Array | null;
  /** `lost`: audio is known to be missing in it, so that leaving it out is no disturbance. */
  add(spectrum: Float64Array, lost: boolean): PeriodOutcome;
  /** The period before was left out because audio went missing in it. */
  blameLoss(): void;
  /** Power since the last change of gain against that of the whole average, dB. */
  levelShiftDb(): number;
  /** The gain of what plays changed by so many dB; spectra are re that gain. */
  changeGain(db: number): void;
  clear(): void;
}

/** So many are held back and compared with one another before the average is closed to change. */
const held = 5;
/** So many left out in a row mean that what is heard has changed for good. */
const mostInRow = 4;
/** A rise by more than this makes what was averaged before too noisy to keep, dB. */
const mostRiseDb = 3;
/** Loudspeakers may compress by this factor of amplitude; more is something else. */
const mostCompression = 1.5;
/** Share of each good period in what is usual. */
const learning = 0.1;

/** Feeds an average; see sortOut for the first periods, isDisturbed for those after. */
export function createPeriodPool(average: PeriodAverage, { first, last }: PeriodBins): PeriodPool {
  const bands = judgeBands(first, last);
  let early: Float64Array[] = [];
  let earlyLost: boolean[] = [];
  let usual: Float64Array<ArrayBufferLike> | null = null;
  let signal: Float64Array<ArrayBufferLike> = new Float64Array(0);
  let disturbed = 0;
  let renewed = 0;
  let pending = 0;
  let inRow = 0;
  let whole = { sum: 0, count: 0 };
  let since = { sum: 0, count: 0 };
  /** Factor that spectra of the present gain take; null until the first of them. */
  let scale: number | null = 1;

  const powerOf = (spectrum: Float64Array): number => {
    let sum = 0;
    for (let n = 2 * first; n < 2 * last + 2; n++) sum += (spectrum[n] ?? 0) ** 2;
    return sum;
  };
  /** `factor` is what the spectrum was multiplied by to bring it to the average's level. */
  const count = (spectrum: Float64Array, factor = 1): void => {
    const power = powerOf(spectrum);
    whole = { sum: whole.sum + power, count: whole.count + 1 };
    since = { sum: since.sum + power / (factor * factor), count: since.count + 1 };
  };
  /** What brings a spectrum to the level of the average; 1 when it is none of its kind. */
  const levelFactor = (spectrum: Float64Array): number => {
    let product = 0;
    let own = 0;
    for (let n = 2 * first; n < 2 * last + 2; n++) {
      const reference = average.mean[n] ?? 0;
      product += (spectrum[n] ?? 0) * reference;
      own += reference * reference;
    }
    const ratio = product / own;
    return ratio > 1 / mostCompression && ratio < mostCompression ? 1 / ratio : 1;
  };
  const forget = (): void => {
    average.clear();
    early = [];
    earlyLost = [];
    usual = null;
    pending = 0;
    inRow = 0;
    whole = { sum: 0, count: 0 };
    since = { sum: 0, count: 0 };
    scale = 1;
  };

  const addEarly = (spectrum: Float64Array, lost: boolean): PeriodOutcome => {
    early.push(spectrum.slice());
    earlyLost.push(lost);
    if (early.length < 3) {
      average.add(spectrum);
      count(spectrum);
      return 'good';
    }
    const sorted = sortOut(early, bands);
    average.clear();
    early.forEach((one, n) => {
      if (sorted.good[n]) average.add(one);
    });
    pending = sorted.good.filter((good, n) => !good && !earlyLost[n]).length;
    const good = sorted.good.at(-1) === true;
    if (good) count(spectrum);
    if (early.length === held) {
      usual = sorted.usual;
      signal = bandPowers(average.mean, bands);
      disturbed += pending;
      pending = 0;
      early = [];
      earlyLost = [];
    }
    return good ? 'good' : 'left out';
  };

  return {
    get disturbed() {
      return disturbed + pending;
    },
    get renewed() {
      return renewed;
    },
    reference: () => (average.count > 0 ? average.mean : null),
    add(spectrum, lost) {
      if (usual === null) return addEarly(spectrum, lost);
      const factor = scale ?? levelFactor(spectrum);
      scale = factor;
      if (factor !== 1) {
        for (let n = 0; n < spectrum.length; n++) spectrum[n] = (spectrum[n] ?? 0) * factor;
      }
      const distances = bandDistances(spectrum, average.mean, bands);
      if (isDisturbed(distances, usual, signal)) {
        inRow++;
        if (!lost) disturbed++;
        if (inRow < mostInRow) return 'left out';
        renewed++;
        forget();
        return 'renewed';
      }
      inRow = 0;
      const single = 1 / (1 + 1 / average.count);
      usual = usual.map((old, band) => old + learning * (single * (distances[band] ?? 0) - old));
      average.add(spectrum);
      count(spectrum, factor);
      return 'good';
    },
    blameLoss() {
      if (earlyLost.length > 0) earlyLost[earlyLost.length - 1] = true;
      else if (inRow > 0 && disturbed > 0) disturbed--;
    },
    levelShiftDb() {
      if (!(whole.sum > 0 && since.sum > 0)) return 0;
      return 10 * Math.log10(since.sum / since.count / (whole.sum / whole.count));
    },
    changeGain(db) {
      if (usual === null || db > mostRiseDb) return forget();
      const ratio = 10 ** (-db / 10);
      usual = usual.map((value) => value * ratio);
      average.scaleNoise(ratio);
      since = { sum: 0, count: 0 };
      scale = null;
      inRow = 0;
    },
    clear() {
      forget();
      disturbed = 0;
      renewed = 0;
    },
  };
}
