import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { foldPeriodic } from '../../dsp/room/periodic';
import type { ChannelLabel } from '../system/channel';
import type { LineSound } from './port';
import { practiceRate } from './practice-clock';
import { convolver } from './practice-convolver';
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
  { room, microphone, speakers }: PracticeSystem,
  { silent }: PracticeFaults = {},
): (sound: LineSound) => HeardSound {
  const responses = new Map<ChannelLabel, Float64Array>();
  const responseOf = (channel: ChannelLabel): Float64Array | null => {
    const known = responses.get(channel);
    const entry = speakers.find((one) => one.channel === channel);
    if (known || !entry || silent?.includes(channel)) return known ?? null;
    const response = impulseResponseAt(room, entry.speaker, microphone, practiceRate);
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
