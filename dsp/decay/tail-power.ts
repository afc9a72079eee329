import type { Envelope } from './band-envelope';
import { meanPower } from './decay-line';

/** Without noise heard by itself this share of the response, at its end, stands for it. */
const tailShare = 0.1;

/**
 * Mean power of the response's last tenth, without its last `blurSeconds`, where a filter lacks what
 * would follow; 0 where nothing is left.
 */
export function tailPower({ power, sampleRate }: Envelope, blurSeconds: number): number {
  const to = power.length - Math.ceil(blurSeconds * sampleRate);
  return meanPower(power, Math.max(0, Math.floor(to - tailShare * power.length)), to);
}
