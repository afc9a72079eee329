import { msg, str } from '@lit/localize';
import { largestMagnitude } from '../../dsp/level/largest';
import { meanSquare } from '../../dsp/level/mean-square';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { Arrival } from '../../dsp/timing/arrival';
import type { Channel } from '../system/channel';

/** Peak to noise under which a segment counts as silent, dB. */
const silentDb = 18;
/** Share of the time before zero delay in which no speaker can be heard yet. */
const earlyShare = 0.6;

/**
 * What is said of a channel that stays silent; null when it does not. It sounds when its arrival was
 * found in the band asked for, or the response's largest sample stands well over the noise: that of
 * the silence through the same path, or, without it, the response's own before anything can arrive.
 * Noise alone has a largest sample too, some 14 dB over its rms, which must not be timed.
 */
export function sayIfSilent(
  channel: Channel,
  ir: ImpulseResponse,
  noise: ImpulseResponse | null,
  arrival: Arrival | null,
): string | null {
  const timed = arrival !== null && !arrival.bandAdapted;
  if (timed || carriesSound(ir, noise)) return null;
  return msg(
    str`${channel.name} stays silent: nothing above the noise in its segment. Check its amplifier, its plug and its standby, then repeat it.`,
  );
}

function carriesSound({ samples, zeroIndex }: ImpulseResponse, noise: ImpulseResponse | null) {
  const quiet = noise?.samples ?? samples.subarray(0, Math.floor(earlyShare * zeroIndex));
  return largestMagnitude(samples) > 10 ** (silentDb / 20) * Math.sqrt(meanSquare(quiet));
}
