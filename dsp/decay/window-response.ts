import type { ImpulseResponse } from '../response/impulse-response';
import { fadeEnds } from '../signal/fade';

/** How much of a response is looked at. */
export interface WindowOptions {
  /** Seconds before and after the arrival that are kept; left out: all there is. */
  readonly beforeSeconds?: number;
  readonly afterSeconds?: number;
}

/** Shares of what is kept before and after the arrival over which it fades. */
const fadeShares = [0.5, 0.25] as const;

/**
 * The part of a response round an arrival (s after zero delay), its zero delay kept. Where it is
 * cut it fades by half a raised cosine: over the first half of what stands before the arrival, and
 * over the last quarter of what stands after. Throws RangeError for a span that is not positive.
 */
export function windowResponse(
  ir: ImpulseResponse,
  arrivalSeconds: number,
  { beforeSeconds = Infinity, afterSeconds = Infinity }: WindowOptions,
): ImpulseResponse {
  if (!(beforeSeconds >= 0 && afterSeconds > 0)) {
    throw new RangeError(`spans must be positive, got ${beforeSeconds}, ${afterSeconds}`);
  }
  const { samples, sampleRate, zeroIndex } = ir;
  const arrival = Math.round(zeroIndex + arrivalSeconds * sampleRate);
  const from = Math.max(0, arrival - Math.round(beforeSeconds * sampleRate));
  const to = Math.min(samples.length, arrival + Math.round(afterSeconds * sampleRate));
  const piece = samples.slice(from, to);
  fadeEnds(
    piece,
    from > 0 ? Math.floor(fadeShares[0] * (arrival - from)) : 0,
    to < samples.length ? Math.floor(fadeShares[1] * (to - arrival)) : 0,
  );
  return { samples: piece, sampleRate, zeroIndex: zeroIndex - from };
}
