import type { Quantiles } from './posterior';
import { cautionOf, type RolloffFit } from './read-posterior';

/** `fit` with its intervals widened to hold those of `other`, and the more doubtful box type. */
export function widestFit(fit: RolloffFit, other: RolloffFit): RolloffFit {
  const f6Hz = widest(fit.f6Hz, other.f6Hz);
  const f10Hz = widest(fit.f10Hz, other.f10Hz);
  const agree = fit.box.kind === other.box.kind;
  const { curve } = fit;
  return {
    ...fit,
    f3Hz: widest(fit.f3Hz, other.f3Hz),
    f6Hz,
    f10Hz,
    f6Upper80Hz: Math.max(fit.f6Upper80Hz, other.f6Upper80Hz),
    box: {
      kind: agree ? fit.box.kind : 'cannot tell',
      probability: Math.min(fit.box.probability, other.box.probability),
    },
    curve: {
      ...curve,
      lowDb: curve.lowDb.map((db, i) => Math.min(db, other.curve.lowDb[i] ?? db)),
      highDb: curve.highDb.map((db, i) => Math.max(db, other.curve.highDb[i] ?? db)),
    },
    caution: cautionOf(f6Hz, f10Hz, fit.usableHz),
  };
}

function widest(a: Quantiles, b: Quantiles): Quantiles {
  return { low: Math.min(a.low, b.low), median: a.median, high: Math.max(a.high, b.high) };
}
