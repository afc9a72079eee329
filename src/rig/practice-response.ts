import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import type { ChannelLabel } from '../system/channel';
import type { PracticeFaults, PracticeSystem } from './practice-system';

/**
 * What the microphone hears of a channel: the sum of all speakers that are wired to it, as they are
 * wired; null for silence. Throws RangeError for a speaker the room does not have.
 */
export function channelResponse(
  { room, microphone, speakers }: PracticeSystem,
  channel: ChannelLabel,
  { silent, wiring, inverted }: PracticeFaults,
  sampleRate: number,
): Float64Array | null {
  if (silent?.includes(channel)) return null;
  let sum: Float64Array | null = null;
  for (const label of wiring?.[channel] ?? [channel]) {
    const entry = speakers.find((one) => one.channel === label);
    if (!entry) throw new RangeError(`the simulated room has no speaker ${label}`);
    const turned = inverted?.includes(label) ?? false;
    const speaker = turned
      ? { ...entry.speaker, inverted: !entry.speaker.inverted }
      : entry.speaker;
    const response = impulseResponseAt(room, speaker, microphone, sampleRate);
    if (sum) for (let n = 0; n < sum.length; n++) sum[n] = (sum[n] ?? 0) + (response[n] ?? 0);
    else sum = response;
  }
  return sum;
}
