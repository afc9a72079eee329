import { msg, str } from '@lit/localize';
import { bandPower } from '../../dsp/level/band-level';
import { powerToDb } from '../../dsp/level/decibels';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import { readResponse } from '../reading/read-curves';
import type { ReadingCurves } from '../reading/reading';

/** Bands a level is read in, and those a response is normalised in; as for sweeps. */
const bands = {
  main: { level: [500, 2000], zero: [500, 2000] },
  sub: { level: [30, 80], zero: [40, 80] },
} as const;

/** |H|² and the noise in it, known from bandHz[0] to bandHz[1]. */
export interface ShapeSource {
  readonly heard: PowerSpectrum;
  readonly hiss: PowerSpectrum | null;
  readonly bandHz: readonly [number, number];
  readonly isSub: boolean;
}

/** Band a level is read in, Hz. */
export function levelBand(isSub: boolean): readonly [number, number] {
  return (isSub ? bands.sub : bands.main).level;
}

/** Edges of bins and of bands need not meet exactly. */
const slackHz = 1;

function covers({ bandHz }: ShapeSource, [low, high]: readonly [number, number]): boolean {
  return bandHz[0] <= low + slackHz && bandHz[1] >= high - slackHz;
}

/** Response as a sweep's reading has it, between the band's ends; null when it cannot be normalised. */
export function readShape(source: ShapeSource): ReadingCurves['response'] | null {
  const { zero } = source.isSub ? bands.sub : bands.main;
  if (!covers(source, zero)) return null;
  const { heard, hiss, bandHz, isSub } = source;
  const { response } = readResponse(
    beyondEnds(heard, bandHz),
    hiss && beyondEnds(hiss, bandHz),
    null,
    isSub,
  );
  const inside = response.hz.map((hz) => hz >= bandHz[0] - slackHz && hz <= bandHz[1] + slackHz);
  const keep = (values: number[]): number[] => values.filter((_, n) => inside[n]);
  return { hz: keep(response.hz), db: keep(response.db), noiseDb: keep(response.noiseDb) };
}

/**
 * Level in the band sweeps are levelled in, the noise's share taken off; null when the band is not
 * covered or noise is half of what is heard.
 */
export function readLevel(source: ShapeSource): {
  readonly db: number | null;
  readonly why: string | null;
} {
  const level = levelBand(source.isSub);
  if (!covers(source, level)) {
    return {
      db: null,
      why: msg(
        str`No level: it is read from ${level[0]} to ${level[1]} Hz, and the noise does not cover that.`,
      ),
    };
  }
  const whole = bandPower(beyondEnds(source.heard, source.bandHz), level[0], level[1]);
  const noise = source.hiss
    ? bandPower(beyondEnds(source.hiss, source.bandHz), level[0], level[1])
    : 0;
  if (whole - noise > whole / 2) return { db: powerToDb(whole - noise), why: null };
  return {
    db: null,
    why: msg(
      'No level: the room is as loud as the speaker in the band it is read in. More level would settle it.',
    ),
  };
}

/** The spectrum with its ends mirrored outward by 1/12 octave, so that means at the ends are right. */
function beyondEnds(
  { power, hzPerBin }: PowerSpectrum,
  [low, high]: readonly [number, number],
): PowerSpectrum {
  const first = Math.max(Math.ceil(low / hzPerBin - 1e-6), 1);
  const last = Math.min(Math.floor(high / hzPerBin + 1e-6), power.length - 1);
  const reach = 2 ** (1 / 12);
  const wide = power.slice();
  for (let k = Math.floor(first / reach); k < first; k++) {
    wide[k] = power[Math.min(2 * first - k, last)] ?? 0;
  }
  for (let k = last + 1; k <= Math.min(Math.ceil(last * reach), power.length - 1); k++) {
    wide[k] = power[Math.max(2 * last - k + 1, first)] ?? 0;
  }
  return { power: wide, hzPerBin };
}
