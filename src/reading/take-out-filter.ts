import { magnitude, multiply, type Complex } from '../../dsp/filter/complex';
import { analogueSections, filterResponse, type FilterSpec } from '../../dsp/filter/analogue';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import type { EarlyBands, RolloffBands } from '../../dsp/rolloff/rolloff-bands';
import type { FilterKind } from '../system/sheet/processor-sheet';

/** A crossover in force on a channel, and the range in which it can be divided out. */
export interface FilterInForce {
  readonly spec: FilterSpec;
  /** Filter of the subs that play this channel's bass meanwhile; null: it goes to nobody. */
  readonly bassOnSubs: FilterSpec | null;
}

/** More is not made up: the processor's own filter is known no better. */
const mostBoostDb = 24;
/** A sub stands this far under the speaker it plays along with, dB, where it no longer counts. */
const subBelowDb = 10;
/** Band whose noise is 6 dB or less under the signal cannot be lifted. */
const leastMarginDb = 6;
const lowestHz = 10;
/** So many times its cutoff a high-pass takes nothing any more that counts. */
const negligibleFrom = 30;
const highestHz = 500;

/** The filter of a crossover, as the dsp room names it. */
export function filterOf(
  { family, order }: FilterKind,
  kind: FilterSpec['kind'],
  cutoffHz: number,
): FilterSpec {
  const name = family === 'Butterworth' ? 'butterworth' : 'linkwitz-riley';
  return { family: name, kind, order, cutoffHz };
}

/**
 * The range, Hz, in which a filter in force can be divided out, as far as that follows from the
 * filters alone: where it takes less than 24 dB, and where the speaker stands 10 dB over a sub that
 * plays its bass, both as flat as their filters. Common practice.
 */
export function divisibleHz({ spec, bassOnSubs }: FilterInForce): readonly [number, number] {
  const isDivisible = (hz: number): boolean => {
    const own = gainDb(spec, hz);
    const clear = bassOnSubs === null || own - gainDb(bassOnSubs, hz) >= subBelowDb;
    return own >= -mostBoostDb && clear;
  };
  let low = spec.cutoffHz;
  let high = spec.cutoffHz;
  const step = 2 ** (1 / 24);
  if (spec.kind === 'high-pass') {
    if (isDivisible(low)) while (low > lowestHz && isDivisible(low / step)) low /= step;
    else while (low < highestHz && !isDivisible(low)) low *= step;
    return [low, Infinity];
  }
  while (high < highestHz && isDivisible(high * step)) high *= step;
  return [0, high];
}

/**
 * Bass in bands with the filter divided out of signal and noise alike, as far as `range` goes. Under
 * a window e^(−t/τ) a filter H(s) has H(jω + 1/τ).
 */
export function takeOutOfBands(
  bands: RolloffBands,
  spec: FilterSpec,
  range: readonly [number, number],
): RolloffBands {
  const divided = ({ power, noisePower }: Omit<EarlyBands, 'seconds'>, perSecond: number) => {
    const gains = bands.hz.map((hz) =>
      gainPower(spec, Math.min(Math.max(hz, range[0]), range[1]), perSecond),
    );
    const divide = (values: Float64Array): Float64Array =>
      values.map((value, k) => value / (gains[k] ?? 1));
    return { power: divide(power), noisePower: divide(noisePower) };
  };
  const early = bands.early.map((part) => ({ ...part, ...divided(part, 1 / part.seconds) }));
  return { ...bands, ...divided(bands, 0), early };
}

/** A power spectrum with the filter divided out, outside `range` by no more than at its ends. */
export function takeOutOfSpectrum(
  { hzPerBin, power }: PowerSpectrum,
  spec: FilterSpec,
  range: readonly [number, number],
): PowerSpectrum {
  const [low, high] = [range[0], Math.min(range[1], negligibleFrom * spec.cutoffHz)];
  const [below, above] = [gainPower(spec, low), gainPower(spec, high)];
  return {
    hzPerBin,
    power: power.map((value, k) => {
      const hz = k * hzPerBin;
      return value / (hz <= low ? below : hz >= high ? above : gainPower(spec, hz));
    }),
  };
}

/**
 * The lowest band from which on, up to an octave over a high-pass, no two bands in a row lie less
 * than 6 dB over the noise, Hz; below, dividing would lift noise.
 */
export function clearFromHz({ hz, marginDb }: RolloffBands, cutoffHz: number): number {
  let clear = Infinity;
  let noisy = 0;
  for (let k = hz.length - 1; k >= 0; k--) {
    const f = hz[k] ?? 0;
    if (f > 2 * cutoffHz) continue;
    noisy = (marginDb[k] ?? 0) < leastMarginDb ? noisy + 1 : 0;
    if (noisy > 1) break;
    if (noisy === 0) clear = f;
  }
  return clear;
}

/** How far a low-pass delays what lies well below it, seconds. */
export function lowPassDelaySeconds(spec: FilterSpec): number {
  const hz = spec.cutoffHz / 1000;
  const { re, im } = filterResponse(spec, hz);
  return -Math.atan2(im, re) / (2 * Math.PI * hz);
}

function gainDb(spec: FilterSpec, hz: number): number {
  return 20 * Math.log10(Math.max(magnitude(filterResponse(spec, hz)), 1e-12));
}

/** |H|² at jω + perSecond. */
function gainPower(spec: FilterSpec, hz: number, perSecond = 0): number {
  const s = { re: perSecond / (2 * Math.PI * spec.cutoffHz), im: hz / spec.cutoffHz };
  const squared = multiply(s, s);
  const gain = analogueSections(spec).reduce(
    (power, { b, a }) => (power * sizeOf(b, s, squared)) / sizeOf(a, s, squared),
    1,
  );
  return Math.max(gain, 1e-12);
}

/** |c2 s² + c1 s + c0|². */
function sizeOf(
  [c2, c1, c0]: readonly [number, number, number],
  s: Complex,
  squared: Complex,
): number {
  return (c2 * squared.re + c1 * s.re + c0) ** 2 + (c2 * squared.im + c1 * s.im) ** 2;
}
