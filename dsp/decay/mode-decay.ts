import { fitSlope } from '../timing/fit-slope';
import type { Envelope } from './band-envelope';
import { blurSeconds, powerAt } from './gaussian-band';

/** How a mode rings out, or why it cannot be told. */
export interface ModeDecay {
  /** Time in which it loses 60 dB, s; null: cannot be told. */
  readonly seconds: number | null;
  /** 90 % interval; null without seconds. */
  readonly interval: readonly [number, number] | null;
  /** Why there is no number and what would settle it; null when there is one. */
  readonly sentence: string | null;
}

/** The fit begins so many blurs after the arrival, where the filter has let the arrival pass. */
const startBlurs = 1.5;
/** A mode decays slowly against its filter when width times decay time is this or more. */
const leastProduct = 2.5;
/** Levels are read up to so far above the noise, over at most and at least so many dB. */
const aboveNoiseDb = 10;
const mostDb = 40;
const leastDb = 10;
const leastPoints = 4;
/** A single mode falls along a line; more than this rms is a beat, dB. */
const mostResidualDb = 1.5;
/** What neighbours farther away leave on the line, dB. */
const expectedDb = 0.5;

/**
 * Ring-out of one mode: least squares through the level of a Gaussian band round it, noise power
 * taken off, from 1.5 blurs after the arrival until it stands 10 dB over the noise or has lost
 * 40 dB. Told when at least 10 dB are heard, they lie on a line within 1.5 dB rms, and the mode is
 * slow against the filter. `name` names the mode.
 */
export function fitModeDecay(
  envelope: Envelope,
  noise: number,
  arrivalSeconds: number,
  widthHz: number,
  name: string,
): ModeDecay {
  const none = (why: string): ModeDecay => ({
    seconds: null,
    interval: null,
    sentence: `No ring-out at ${name}: ${why}`,
  });
  const blur = blurSeconds(widthHz);
  const end = (envelope.power.length - envelope.zeroIndex) / envelope.sampleRate - blur;
  const least = Math.max(noise * 10 ** (aboveNoiseDb / 10), Number.MIN_VALUE);
  const levels: { seconds: number; db: number }[] = [];
  for (let t = startBlurs * blur; arrivalSeconds + t < end; t += blur / 2) {
    const power = powerAt(envelope, arrivalSeconds + t);
    if (!(power >= least)) break;
    const db = 10 * Math.log10(power - noise);
    if (db < (levels[0]?.db ?? db) - mostDb) break;
    levels.push({ seconds: t, db });
  }
  const fallen = (levels[0]?.db ?? 0) - (levels.at(-1)?.db ?? 0);
  const points = levels.map(({ seconds, db }) => {
    return { x: seconds, y: db, deviation: expectedDb, group: 0 };
  });
  const { slope, slopeDeviation, quantile } = fitSlope(points);
  const enough = levels.length >= leastPoints;
  if (enough && residual(levels, slope) > mostResidualDb) {
    return none(
      'its level rises and falls as it decays, as two modes do that beat. A seat where only one of them is heard would settle it.',
    );
  }
  if (!enough || fallen < leastDb || !(slope < 0)) {
    return none(
      `less than ${leastDb} dB of its decay stand clear of the noise. More level would settle it.`,
    );
  }
  const seconds = -60 / slope;
  if (widthHz * seconds < leastProduct) {
    return none(
      'it dies away as fast as a filter that parts it from its neighbours. A seat where those are not heard would settle it.',
    );
  }
  const share = (quantile * slopeDeviation) / -slope;
  return {
    seconds,
    interval: [seconds * Math.exp(-share), seconds * Math.exp(share)],
    sentence: null,
  };
}

/** Rms distance of the levels from the line of a slope through their mean. */
function residual(levels: readonly { seconds: number; db: number }[], slope: number): number {
  const mean = (of: (one: { seconds: number; db: number }) => number): number =>
    levels.reduce((sum, one) => sum + of(one), 0) / levels.length;
  const offset = mean(({ seconds, db }) => db - slope * seconds);
  return Math.sqrt(mean(({ seconds, db }) => (db - slope * seconds - offset) ** 2));
}
