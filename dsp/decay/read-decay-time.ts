import type { DecayCurve } from './decay-curve';
import { rangeLimits, untold, type DecayRange, type DecayTime } from './decay-time';
import { fitDecay } from './fit-decay';

/** Least B·T for a filter that runs backwards. ISO 3382-2:2008, 7.3 (from memory). */
const leastProduct = 4;
/**
 * More non-linearity than this, ‰, is no straight line (ISO 3382-2:2008, annex B, from memory), if it
 * is also so many times what chance makes of a straight one at one place.
 */
const mostNonLinearity = 10;
const timesChance = 2.5;
/** At least this share of the range must lie on the curve after the arrival. */
const leastShare = 0.5;
/** From standard deviation to half a 90 % interval. */
const quantile = 1.645;

/** Why there is no decay curve. */
export type NoCurve = 'noise' | 'record';

const sayNone: Readonly<Record<NoCurve, string>> = {
  noise: 'no decay stands clear of the noise. More level would settle it.',
  record: 'the response is too short. A longer pause after the sweep would settle it.',
};

/**
 * EDT, T20 or T30 of a band from its decay curve (or what hides it: the noise, the record's end), or
 * a sentence why not: the noise lies less than 10 dB below the range, the band's width times the time
 * is below 4, or the direct sound takes more than half of the range. `name` names the band.
 * Distrusted beyond a non-linearity of 10 ‰ that chance does not explain, except for EDT, which
 * bends by nature.
 * Source: ISO 3382-1:2009, 5.3; ISO 3382-2:2008, 6, 7.3 and annex B (from memory).
 */
export function readDecayTime(
  curve: DecayCurve | NoCurve,
  range: DecayRange,
  widthHz: number,
  name: string,
): DecayTime {
  const { topDb, bottomDb, neededDb, chanceBend, scatter } = rangeLimits[range];
  const none = (why: string): DecayTime => untold(`No ${range} at ${name}: ${why}`);
  if (typeof curve === 'string') return none(sayNone[curve]);
  if (curve.rangeDb < neededDb) return none(sayRange(curve, neededDb));
  const fit = fitDecay(curve, topDb, bottomDb, widthHz);
  const read = fit?.seconds ?? curve.lateSeconds;
  if (widthHz * read < leastProduct) {
    return none(
      `it is below ${(leastProduct / widthHz).toFixed(2)} s, too short to be told from the octave filter’s own decay. The octave above, which is read in finer steps of time, would settle it.`,
    );
  }
  if (!fit || fit.coveredDb < leastShare * (topDb - bottomDb)) {
    return none(
      'the direct sound stands so far above the room that too little of the decay is left. A seat farther from the speaker would settle it.',
    );
  }
  const { seconds, nonLinearity } = fit;
  const factor = Math.exp(quantile * Math.hypot(fit.deviation, scatter));
  const chance = (timesChance * (chanceBend ?? Infinity)) / (widthHz * seconds);
  const most = Math.max(mostNonLinearity, chance);
  const bent = nonLinearity > most;
  return {
    seconds,
    interval: [seconds / factor, seconds * factor],
    nonLinearity,
    trusted: !bent,
    sentence: bent
      ? `${range} at ${name} is not to be trusted: its decay is no straight line (non-linearity ${nonLinearity.toFixed(0)} ‰, more than ${most.toFixed(0)}). Another seat would tell whether the room does it.`
      : null,
  };
}

function sayRange({ rangeDb, endedBy }: DecayCurve, neededDb: number): string {
  const missing = neededDb - rangeDb;
  if (endedBy === 'record') {
    return `the response ends after ${Math.max(0, Math.floor(rangeDb))} dB of decay, and ${neededDb} are needed. A longer pause after the sweep would settle it.`;
  }
  const stands = `the decay starts ${Math.max(0, Math.floor(rangeDb))} dB above the noise, and ${neededDb} are needed.`;
  if (missing <= 3) return `${stands} A sweep twice as long would settle it.`;
  if (missing <= 6) return `${stands} A sweep four times as long would settle it.`;
  return `${stands} ${Math.ceil(missing)} dB more level would settle it.`;
}
