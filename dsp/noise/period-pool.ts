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
  restartLevel(): void;
  clear(): void;
}

/** So many are held back and compared with one another before the average is closed to change. */
const held = 5;
/** So many left out in a row mean that what is heard has changed for good. */
const mostInRow = 4;
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

  const powerOf = (spectrum: Float64Array): number => {
    let sum = 0;
    for (let n = 2 * first; n < 2 * last + 2; n++) sum += (spectrum[n] ?? 0) ** 2;
    return sum;
  };
  const count = (spectrum: Float64Array): void => {
    const power = powerOf(spectrum);
    whole = { sum: whole.sum + power, count: whole.count + 1 };
    since = { sum: since.sum + power, count: since.count + 1 };
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
      count(spectrum);
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
    restartLevel() {
      since = { sum: 0, count: 0 };
    },
    clear() {
      forget();
      disturbed = 0;
      renewed = 0;
    },
  };
}
