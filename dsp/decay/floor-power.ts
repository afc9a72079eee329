import type { Envelope } from './band-envelope';
import { meanPower } from './decay-line';

/** Without noise heard by itself this share of the response, at its end, stands for it. */
const tailShare = 0.1;

/**
 * Mean power of the noise in a band: of noise heard by itself, else of the response's end; without
 * `blurSeconds` at the ends, where the filter lacks what comes before or after. 0 where nothing
 * is left.
 */
export function floorPower(envelope: Envelope, noise: Envelope | null, blurSeconds: number): number {
  const { power, sampleRate } = noise ?? envelope;
  const edge = Math.ceil(blurSeconds * sampleRate);
  const to = power.length - edge;
  const from = noise ? edge : Math.max(0, Math.floor(to - tailShare * power.length));
  return meanPower(power, from, to);
}
