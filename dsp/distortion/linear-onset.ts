import type { ImpulseResponse } from '../response/impulse-response';

/** A speaker arrives this near to zero delay, seconds. */
const arrivesWithin = 0.12;
/** Its onset is where it first comes this near its peak, and this long before it. */
const risesTo = 0.1;
const risesWithin = 0.015;

/** Index at which the linear response begins: where it first reaches −20 dB re its peak. */
export function linearOnset({ samples, sampleRate, zeroIndex }: ImpulseResponse): number {
  const reach = Math.round(arrivesWithin * sampleRate);
  let peak = zeroIndex;
  for (let n = Math.max(0, zeroIndex - reach); n <= zeroIndex + reach; n++) {
    if (Math.abs(samples[n] ?? 0) > Math.abs(samples[peak] ?? 0)) peak = n;
  }
  const least = risesTo * Math.abs(samples[peak] ?? 0);
  let onset = Math.max(0, peak - Math.round(risesWithin * sampleRate));
  while (onset < peak && Math.abs(samples[onset] ?? 0) < least) onset++;
  return onset;
}
