import type { SpeakerLimits } from '../../dsp/bass/crossover-rules';
import { readDrives } from '../reading/lowest-frequency';
import type { ChannelMeasurement } from './channel-measurement';

/** A speaker is asked for no more distortion than this at its level, percent. */
export const limitPercent = 5;

/** How low a speaker reaches, by its roll-off and by its distortion at the level it was played. */
export function speakerLimits({ channel, reading }: ChannelMeasurement): SpeakerLimits {
  return {
    name: channel.label,
    f3Hz: reading?.rolloff?.f3Hz.median ?? null,
    f6UpperHz: reading?.rolloff?.f6UpperHz ?? null,
    lowest: lowestOf({ channel, reading }, limitPercent),
  };
}

/** The lowest frequency at which a speaker keeps within a limit of distortion; null where not read. */
export function lowestOf(
  { channel, reading }: Pick<ChannelMeasurement, 'channel' | 'reading'>,
  percent: 5 | 10,
): SpeakerLimits['lowest'] {
  const distortion = reading?.distortion;
  if (!distortion) return null;
  const { lowest } = readDrives(channel, [{ driveDb: 0, distortion }]);
  return lowest.find((one) => one.percent === percent)?.found ?? null;
}
