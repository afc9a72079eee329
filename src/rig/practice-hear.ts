import { foldPeriodic } from '../../dsp/room/periodic';
import type { ChannelLabel } from '../system/channel';
import type { LineSound } from './port';
import { practiceRate } from './practice-clock';
import { convolver } from './practice-convolver';
import { channelResponse } from './practice-response';
import type { PracticeFaults, PracticeSystem } from './practice-system';

/** A sound of a line together with one period of it as it reaches the microphone. */
export interface HeardSound extends LineSound {
  /** As long as the period, on the stimulus clock, sound pressure 1 at 1 m. */
  readonly heard: Float64Array;
}

/**
 * Computes what the microphone hears of a period that has been repeated for ever; keeps the
 * response of every speaker it was asked about.
 */
export function soundHearer(
  system: PracticeSystem,
  faults: PracticeFaults = {},
): (sound: LineSound) => HeardSound {
  const responses = new Map<ChannelLabel, Float64Array | null>();
  const responseOf = (channel: ChannelLabel): Float64Array | null => {
    const known = responses.get(channel);
    if (known !== undefined) return known;
    const there = system.speakers.some((one) => one.channel === channel);
    const response = there ? channelResponse(system, channel, faults, practiceRate) : null;
    responses.set(channel, response);
    return response;
  };
  return (sound) => {
    const { length } = sound.period;
    const response = responseOf(sound.channel);
    if (!response) return { ...sound, heard: new Float64Array(length) };
    const once = new Float64Array(length + response.length);
    convolver(response).add(once, 0, sound.period);
    return { ...sound, heard: foldPeriodic(once, length) };
  };
}
