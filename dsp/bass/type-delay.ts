import type { AlignedDelay } from './delay-candidates';
import type { DelayAndPolarity, DelayScan } from './delay-scan';

/** How a processor takes delays; it can only wait. */
export interface DelaySteps {
  readonly stepSeconds: number;
  /** Least and most delay of any channel, from 0 on. */
  readonly rangeSeconds: readonly [number, number];
  /** Whether all mains can be delayed together, which makes a sub early. */
  readonly mainsCanWait: boolean;
}

/** A delay as it is typed. */
export interface TypedDelay {
  readonly subSeconds: number;
  /** For all mains together, beside what they have. */
  readonly mainsSeconds: number;
  readonly inverted: boolean;
  readonly lossDb: number;
  /** Loss beside that of the delay wished for, dB; below 0 where another delay served better. */
  readonly costDb: number;
}

/**
 * The wished delay of a sub, below 0 for earlier than the mains, as a processor can say it: of the
 * steps just below and just above it and its alternatives, held inside the range, the one that
 * loses least; of equal ones the first. Throws RangeError for a step that is not above 0, or a
 * range below 0, upside down or without a step.
 */
export function typeDelay(
  scan: DelayScan,
  wished: DelayAndPolarity,
  alternatives: readonly AlignedDelay[],
  { stepSeconds, rangeSeconds, mainsCanWait }: DelaySteps,
): TypedDelay {
  if (!(stepSeconds > 0 && stepSeconds < Infinity)) {
    throw new RangeError(`stepSeconds must be above 0, got ${stepSeconds}`);
  }
  const least = Math.ceil(rangeSeconds[0] / stepSeconds - 1e-9);
  const most = Math.floor(rangeSeconds[1] / stepSeconds + 1e-9);
  if (!(least >= 0 && least <= most && most < Infinity)) {
    throw new RangeError(
      `rangeSeconds must hold a step and start at 0 or above, got ${rangeSeconds.join(', ')}`,
    );
  }
  // Sub less mains, in steps.
  const earliest = mainsCanWait ? least - most : least;
  const latest = mainsCanWait ? most - least : most;
  const wishedLoss = scan.lossDb(wished);
  const tries = [wished, ...alternatives].flatMap(({ delaySeconds, inverted }) => {
    const steps = delaySeconds / stepSeconds;
    return [...new Set([Math.floor(steps), Math.ceil(steps)])].map((count) => {
      const held = Math.min(Math.max(count, earliest), latest);
      const lossDb = scan.lossDb({ delaySeconds: held * stepSeconds, inverted });
      return { held, inverted, lossDb };
    });
  });
  const best = tries.reduce((a, b) => (b.lossDb < a.lossDb ? b : a));
  const seconds = (count: number): number => Number((count * stepSeconds).toFixed(9));
  return {
    subSeconds: seconds(mainsCanWait ? least + Math.max(best.held, 0) : best.held),
    mainsSeconds: mainsCanWait ? seconds(least + Math.max(-best.held, 0)) : 0,
    inverted: best.inverted,
    lossDb: best.lossDb,
    costDb: best.lossDb - wishedLoss,
  };
}
