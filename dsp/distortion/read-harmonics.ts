import { powerToDb } from '../level/decibels';
import type { ImpulseResponse } from '../response/impulse-response';
import type { SweepSpec } from '../signal/sweep';
import {
  bandWidthHz,
  noiseEnergy,
  windowedEnergy,
  type BandEnergy,
  type NoiseSpectrum,
} from './band-energy';
import { fundamentalGrid, harmonicEndHz } from './fundamental-grid';
import type { Harmonic, HarmonicLimit, HarmonicReading } from './harmonic-reading';
import {
  harmonicWindows,
  highestToldOrder,
  linearWindow,
  orders,
  type HarmonicWindow,
} from './harmonic-windows';
import { quarterTurn } from './quarter-turn';
import { sumHarmonics } from './sum-harmonics';
import { surelyOver } from './surely-over';

/** The linear response counts so long, seconds. */
const linearSeconds = 0.65;
/** Of a harmonic's response at least this share must lie in its window. */
const leastShare = 0.5;
/** The tail of the harmonic above may be this share of what is heard. */
const mostTail = 0.25;
/** The fundamental must exceed the noise so far, as power. */
const leastFundamental = 10;

/** A window's energies by frequency; of the linear response, of harmonics, and of noise. */
interface HarmonicEnergies {
  readonly window: HarmonicWindow;
  readonly seconds: number;
  readonly heard: BandEnergy;
  readonly noise: BandEnergy;
  /** The linear response through the same window at its own arrival. */
  readonly own: BandEnergy;
  /** The linear response as late in the window as the tail of the order above is. */
  readonly tail: { readonly order: number; readonly energy: BandEnergy } | null;
}

/**
 * Harmonics 2 to 5 and their sum against the fundamental's frequency, from a deconvolved sweep that
 * reaches back to harmonicLeadSeconds before the arrival at `arrivalIndex`. Each is read in its own
 * window; how much of a response a window holds, and how much of the order above rings into it, is
 * taken from the linear response, which went through the same speaker and room. Levels are re the
 * fundamental in 1/6 octave, as the microphone hears it.
 * `noise` is the spectrum of silence through the same deconvolution. A harmonic that does not surely
 * exceed the noise, or that the room's decay does not set apart, is null. Throws RangeError for a
 * response that is too short before its arrival.
 * Source: Farina, AES 108 (2000); Novak, Lotton and Simon, JAES 63 (2015); tails: common practice.
 */
export function readHarmonics(
  response: ImpulseResponse,
  sweep: SweepSpec,
  arrivalIndex: number,
  noise: NoiseSpectrum,
): HarmonicReading {
  const { sampleRate } = response;
  const windows = harmonicWindows(sweep, sampleRate, arrivalIndex);
  const first = windows.at(-1)?.start ?? 0;
  if (!(first >= 0)) {
    throw new RangeError(
      `the response must begin before its harmonics do, lacks ${-first} samples`,
    );
  }
  const length = Math.round(linearSeconds * sampleRate);
  const whole = linearWindow(sweep, sampleRate, arrivalIndex, length);
  const linear = windowedEnergy(response, whole);
  const linearNoise = noiseEnergy(noise, whole);
  const parts = linearParts(response, whole, longestOf(windows));
  const energies = windows.flatMap((_, at) => energiesOf(response, noise, parts, windows, at));
  const hz = fundamentalGrid(sweep);
  const harmonics = orders
    .filter((order) => order <= highestToldOrder)
    .map((order, at) => readOrder(order, at, hz, energies, { linear, linearNoise }, sweep));
  return {
    hz,
    fundamentalDb: hz.map((f) => powerToDb(linear(f))),
    fundamentalNoiseDb: hz.map((f) => powerToDb(linearNoise(f))),
    harmonics,
    total: sumHarmonics(harmonics),
    apartFromHz: apartFrom(hz, harmonics),
  };
}

/** The linear response alone and turned by a quarter, as harmonics of odd and even order are. */
interface LinearParts {
  readonly odd: ImpulseResponse;
  readonly even: ImpulseResponse;
  /** Index of the arrival in both. */
  readonly arrival: number;
}

function linearParts(
  { samples, sampleRate }: ImpulseResponse,
  { start, gains, lead }: HarmonicWindow,
  before: number,
): LinearParts {
  const alone = gains.map((gain, n) => gain * (samples[start + n] ?? 0));
  const odd = new Float64Array(before + alone.length);
  odd.set(alone, before);
  const part = (piece: Float64Array) => ({ samples: piece, sampleRate, zeroIndex: before });
  return { odd: part(odd), even: part(quarterTurn(alone, before)), arrival: before + lead };
}

function energiesOf(
  response: ImpulseResponse,
  noise: NoiseSpectrum,
  linear: LinearParts,
  windows: readonly HarmonicWindow[],
  at: number,
): HarmonicEnergies[] {
  const window = windows[at];
  if (!window) return [];
  const above = windows[at + 1];
  /** The linear response where one of that order would be heard in this window. */
  const asOrder = ({ order, start, lead }: HarmonicWindow): BandEnergy => {
    const part = order % 2 === 0 ? linear.even : linear.odd;
    return windowedEnergy(part, window, linear.arrival - (start + lead));
  };
  return [
    {
      window,
      seconds: window.energy / response.sampleRate,
      heard: windowedEnergy(response, window),
      noise: noiseEnergy(noise, window),
      own: asOrder(window),
      tail: above ? { order: above.order, energy: asOrder(above) } : null,
    },
  ];
}

function longestOf(windows: readonly HarmonicWindow[]): number {
  return Math.max(...windows.map(({ gains }) => gains.length));
}

interface Linear {
  readonly linear: BandEnergy;
  readonly linearNoise: BandEnergy;
}

function readOrder(
  order: number,
  at: number,
  grid: readonly number[],
  energies: readonly HarmonicEnergies[],
  linear: Linear,
  sweep: SweepSpec,
): Harmonic {
  const mine = energies[at];
  if (!mine) throw new RangeError(`no window for harmonic ${order}`);
  let lastShare = 1;
  const points = grid.map((f): Point => {
    const hz = order * f;
    if (hz > harmonicEndHz(sweep)) return untold('band', null);
    const fundamental = linear.linear(f) - linear.linearNoise(f);
    if (fundamental < leastFundamental * linear.linearNoise(f)) return untold('noise', null);
    lastShare = shareAt(mine, linear, hz) ?? lastShare;
    const heard = mine.heard(hz);
    const noise = mine.noise(hz);
    const surely = noise * surelyOver(bandWidthHz(hz) * mine.seconds);
    const tail = tailAt(mine, energies, hz);
    const reLevel = (energy: number): number =>
      powerToDb(energy / Math.max(lastShare, leastShare) / fundamental);
    const floorDb = reLevel(surely + tail / mostTail);
    if (heard < surely) return untold('noise', Math.max(floorDb, reLevel(heard)));
    const apart = lastShare >= leastShare && tail <= mostTail * (heard - noise);
    if (!apart) return untold('decay', Math.max(floorDb, reLevel(heard)));
    return { db: reLevel(heard - noise - tail), floorDb, limitedBy: null };
  });
  return {
    order,
    db: points.map(({ db }) => db),
    floorDb: points.map(({ floorDb }) => floorDb),
    limitedBy: points.map(({ limitedBy }) => limitedBy),
  };
}

interface Point {
  readonly db: number | null;
  readonly floorDb: number | null;
  readonly limitedBy: HarmonicLimit | null;
}

function untold(limitedBy: HarmonicLimit, floorDb: number | null): Point {
  return { db: null, floorDb, limitedBy };
}

/** Share of the linear response that the window holds; null where noise hides it. */
function shareAt(
  { own, noise }: HarmonicEnergies,
  { linear, linearNoise }: Linear,
  hz: number,
): number | null {
  const whole = linear(hz) - linearNoise(hz);
  if (whole < leastFundamental * linearNoise(hz)) return null;
  return Math.min(Math.max((own(hz) - noise(hz)) / whole, 0), 1);
}

/** Energy that the order above still has in the window. */
function tailAt(
  { tail, noise }: HarmonicEnergies,
  energies: readonly HarmonicEnergies[],
  hz: number,
): number {
  const above = energies.find(({ window }) => window.order === tail?.order);
  if (!tail || !above) return 0;
  const own = above.own(hz) - above.noise(hz);
  const heard = Math.max(above.heard(hz) - above.noise(hz), 0);
  const late = Math.max(tail.energy(hz) - noise(hz), 0);
  return own > 0 ? heard * Math.min(late / own, 1) : 0;
}

function apartFrom(hz: readonly number[], harmonics: readonly Harmonic[]): number | null {
  const low = harmonics.filter(({ order }) => order <= 3);
  const merged = hz.findLastIndex((_, i) => low.some(({ limitedBy }) => limitedBy[i] === 'decay'));
  return hz[merged + 1] ?? null;
}
