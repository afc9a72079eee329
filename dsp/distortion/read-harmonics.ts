import { powerToDb } from '../level/decibels';
import type { ImpulseResponse } from '../response/impulse-response';
import type { SweepSpec } from '../signal/sweep';
import {
  bandWidthHz,
  energyAt,
  noiseAt,
  type BandEnergy,
  type NoiseEnergy,
  type NoiseSpectrum,
} from './band-energy';
import { fundamentalGrid, harmonicEndHz } from './fundamental-grid';
import {
  energiesAt,
  energiesFor,
  type HarmonicEnergies,
  type ResponseEnergies,
  type SplitEnergies,
} from './harmonic-energies';
import type { Harmonic, HarmonicLimit, HarmonicReading } from './harmonic-reading';
import { highestToldOrder, orders } from './harmonic-windows';
import { sumHarmonics } from './sum-harmonics';
import { surelyOver } from './surely-over';

/** Of a harmonic's response at least this share must lie in its window. */
const leastShare = 0.5;
/** The tail of the harmonic above may be this share of what is heard. */
const mostTail = 0.25;
/** The fundamental must exceed the noise so far, as power. */
const leastFundamental = 10;

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
  const energies = energiesFor(response, sweep, arrivalIndex, noise);
  const hz = fundamentalGrid(sweep);
  const harmonics = orders
    .filter((order) => order <= highestToldOrder)
    .map((order) => readOrder(order, hz, energies, harmonicEndHz(sweep)));
  const [fundamentalDb, fundamentalNoiseDb]: [number[], number[]] = [[], []];
  for (const f of hz) {
    const { linear, linearNoise } = energiesAt(energies, f);
    fundamentalDb.push(powerToDb(energyAt(linear, f)));
    fundamentalNoiseDb.push(powerToDb(noiseAt(linearNoise, f)));
  }
  return {
    hz,
    fundamentalDb,
    fundamentalNoiseDb,
    harmonics,
    total: sumHarmonics(harmonics),
    apartFromHz: apartFrom(hz, harmonics),
  };
}

function readOrder(
  order: number,
  grid: readonly number[],
  energies: SplitEnergies,
  endHz: number,
): Harmonic {
  let lastShare = 1;
  const points: Point[] = [];
  for (const f of grid) {
    const hz = order * f;
    const here = energiesAt(energies, f);
    const fundamental = heardOver(here.linear, here.linearNoise, f);
    if (hz > endHz) points.push(untold('band', null));
    else if (fundamental < leastFundamental * noiseAt(here.linearNoise, f)) {
      points.push(untold('noise', null));
    } else {
      const there = energiesAt(energies, hz);
      const mine = there.harmonics[order - 2];
      if (!mine) throw new RangeError(`no window for harmonic ${order}`);
      lastShare = shareAt(mine, there, hz) ?? lastShare;
      points.push(readPoint(mine, there, hz, lastShare, fundamental));
    }
  }
  return {
    order,
    db: points.map(({ db }) => db),
    floorDb: points.map(({ floorDb }) => floorDb),
    limitedBy: points.map(({ limitedBy }) => limitedBy),
  };
}

function readPoint(
  mine: HarmonicEnergies,
  there: ResponseEnergies,
  hz: number,
  share: number,
  fundamental: number,
): Point {
  const heard = energyAt(mine.heard, hz);
  const noise = noiseAt(mine.noise, hz);
  const surely = noise * surelyOver(bandWidthHz(hz) * mine.window.energySeconds);
  const tail = tailAt(mine, there, hz);
  const whole = Math.max(share, leastShare) * fundamental;
  const floorDb = powerToDb((surely + tail / mostTail) / whole);
  if (heard < surely) return untold('noise', Math.max(floorDb, powerToDb(heard / whole)));
  const apart = share >= leastShare && tail <= mostTail * (heard - noise);
  // At worst the two cancel in part.
  const most = surely + (Math.sqrt(heard) + Math.sqrt(tail)) ** 2;
  if (!apart) return untold('decay', powerToDb(most / whole));
  return { db: powerToDb((heard - noise - tail) / whole), floorDb, limitedBy: null };
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
  { linear, linearNoise }: ResponseEnergies,
  hz: number,
): number | null {
  const whole = heardOver(linear, linearNoise, hz);
  if (whole < leastFundamental * noiseAt(linearNoise, hz)) return null;
  return Math.min(Math.max(heardOver(own, noise, hz) / whole, 0), 1);
}

/** Energy that the order above still has in the window. */
function tailAt(
  { tail, noise }: HarmonicEnergies,
  { harmonics }: ResponseEnergies,
  hz: number,
): number {
  const above = tail && harmonics[tail.order - 2];
  if (!tail || !above) return 0;
  const own = heardOver(above.own, above.noise, hz);
  const heard = Math.max(heardOver(above.heard, above.noise, hz), 0);
  const late = Math.max(heardOver(tail.energy, noise, hz), 0);
  return own > 0 ? heard * Math.min(late / own, 1) : 0;
}

/** What is heard without the noise in it. */
function heardOver(energy: BandEnergy, noise: NoiseEnergy, hz: number): number {
  return energyAt(energy, hz) - noiseAt(noise, hz);
}

function apartFrom(hz: readonly number[], harmonics: readonly Harmonic[]): number | null {
  const low = harmonics.filter(({ order }) => order <= 3);
  const merged = hz.findLastIndex((_, i) => low.some(({ limitedBy }) => limitedBy[i] === 'decay'));
  return hz[merged + 1] ?? null;
}
