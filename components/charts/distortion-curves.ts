import { msg, str } from '@lit/localize';
import type { HarmonicCurve, HarmonicLimit } from '../../dsp/distortion/harmonic-reading';
import type { DistortionReading } from '../../src/reading/reading';
import { isNumber } from '../../src/locale/number-text';

/** Distortion that was read. */
export type DistortionCurves = Extract<DistortionReading, { kind: 'curves' }>;

/** How its levels are written. */
export type DistortionUnit = 'percent' | 'db';

/** A product of distortion by the name it has in the chart. */
export interface NamedCurve {
  readonly id: string;
  readonly name: string;
  readonly curve: HarmonicCurve;
}

const names: Readonly<Record<number, string>> = {
  get 2() {
    return msg('2nd');
  },
  get 3() {
    return msg('3rd');
  },
  get 4() {
    return msg('4th');
  },
  get 5() {
    return msg('5th');
  },
};

/** The total first, then the harmonics. */
export function namedCurves({ total, harmonics }: DistortionCurves): NamedCurve[] {
  return [
    { id: 'total', name: 'total', curve: total },
    ...harmonics.map((curve) => ({
      id: `h${curve.order}`,
      name: names[curve.order] ?? msg(str`${curve.order}th`),
      curve,
    })),
  ];
}

/** Neighbouring frequencies at which the total cannot be told, for one reason. */
export interface HiddenStretch {
  readonly by: HarmonicLimit;
  /** Indices of its first and last frequency. */
  readonly from: number;
  readonly to: number;
}

/** Stretches in which the total is hidden and a level is known that it stays under. */
export function hiddenStretches({ db, floorDb, limitedBy }: HarmonicCurve): HiddenStretch[] {
  const stretches: HiddenStretch[] = [];
  for (let i = 0; i < db.length; i++) {
    const by = limitedBy[i] ?? null;
    if (by === null || !isNumber(floorDb[i])) continue;
    const last = stretches.at(-1);
    if (last && last.by === by && last.to === i - 1)
      stretches[stretches.length - 1] = { ...last, to: i };
    else stretches.push({ by, from: i, to: i });
  }
  return stretches;
}

export const hiddenWords: Readonly<Record<HarmonicLimit, string>> = {
  get noise() {
    return msg('hidden by noise');
  },
  get decay() {
    return msg('hidden by the room');
  },
  get band() {
    return msg('beyond the sweep');
  },
};
