import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { crossoverF6Hz } from '../../dsp/bass/crossover-rules';
import { isRefusal, type RolloffFit, type RolloffRefusal } from '../../dsp/rolloff/fit-rolloff';
import type { RolloffReading } from './reading';

export interface RolloffFinding {
  readonly rolloff: RolloffReading | null;
  readonly curve: RolloffFit['curve'] | null;
  /** Signal over noise from 40 to 80 Hz, dB; null where no noise is known. */
  readonly bassMarginDb: number | null;
  readonly notes: readonly string[];
}

/** A sub whose f10 is known no better than this factor has no roll-off that could be used. */
const subSpread = 4;

const cautions = {
  get wide() {
    return msg(
      'The roll-off is uncertain by more than a factor of 3: a reading close to the driver would settle it.',
    );
  },
  get noise() {
    return msg('The lower end of the roll-off lies in the noise: a longer sweep would settle it.');
  },
  get low() {
    return msg(
      'The speaker may reach below 15 Hz, the lowest band read: the lower limits are not known.',
    );
  },
} as const;

/** What is told of a fit: numbers and curve, or why there are none and what would settle it. */
export function tellRolloff(
  fit: RolloffFit | RolloffRefusal,
  isSub: boolean,
  bassMarginDb: number | null,
): RolloffFinding {
  if (isRefusal(fit)) {
    const note = msg(
      str`No roll-off: ${sayBands(fit.bandsWithMargin)} 6 dB above the noise. More level would settle it.`,
    );
    return { rolloff: null, curve: null, bassMarginDb, notes: [note] };
  }
  const { low, high } = fit.f10Hz;
  if (isSub && high > subSpread * low) {
    const note = msg(
      str`The sub's lower end cannot be told from here: it is 10 dB down somewhere between ${numberText(low, 0)} and ${withUnit(numberText(high, 0), 'Hz')}. A reading close to the sub would settle it.`,
    );
    return { rolloff: null, curve: null, bassMarginDb, notes: [note] };
  }
  return {
    rolloff: {
      f3Hz: estimate(fit.f3Hz),
      f6Hz: estimate(fit.f6Hz),
      f10Hz: estimate(fit.f10Hz),
      f6UpperHz: crossoverF6Hz(fit.f6Upper80Hz, fit.f6Hz.high),
      box: fit.box,
    },
    curve: fit.curve,
    bassMarginDb,
    notes: fit.caution ? [cautions[fit.caution]] : [],
  };
}

function estimate(quantiles: RolloffFit['f3Hz']): RolloffReading['f3Hz'] {
  return { median: quantiles.median, interval: [quantiles.low, quantiles.high] };
}

/** Mean of the finite margins between two frequencies; null when none is finite. */
export function marginBetween(
  hz: Float64Array,
  marginDb: Float64Array,
  lowHz: number,
  highHz: number,
): number | null {
  const inside = marginDb.filter((margin, k) => {
    const f = hz[k] ?? 0;
    return f >= lowHz && f <= highHz && Number.isFinite(margin);
  });
  return inside.length === 0 ? null : inside.reduce((sum, one) => sum + one, 0) / inside.length;
}

function sayBands(count: number): string {
  if (count === 0) return msg('no band of the bass stands');
  return count === 1
    ? msg('only one band of the bass stands')
    : msg(str`only ${count} bands of the bass stand`);
}
