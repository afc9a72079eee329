import { ceilingPath } from '../../dsp/room/place';
import { distanceBetween } from '../../dsp/room/point';
import { soundSpeed } from '../../dsp/room/room';
import { truthOf } from '../../dsp/room/truth';
import type { ChannelLabel, Layout } from '../system/channel';
import { practiceSystem, type PracticeSystem } from './practice-system';
import { isSub } from '../system/channel-names';

/** What is so in a simulated room, of one speaker. */
export interface PracticeChannelTruth {
  readonly channel: ChannelLabel;
  /** Straight line to the microphone. */
  readonly tapeMetres: number;
  /** The straight line and the speaker's own delay: what the microphone hears. */
  readonly distanceMetres: number;
  /** distanceMetres less the reference's, in time. */
  readonly arrivalSeconds: number;
  readonly bounced: boolean;
  /** The same by way of the ceiling for a bounced speaker, else null. */
  readonly ceilingPathMetres: number | null;
  readonly inverted: boolean;
  /** Free field, on axis; subs re 40 to 80 Hz, others re 180 to 500 Hz. */
  readonly f3Hz: number;
  readonly f6Hz: number;
  readonly f10Hz: number;
  readonly box: 'closed' | 'vented';
}

/** What is so in a simulated room: readings are held against it. */
export interface PracticeTruth {
  readonly layout: string;
  readonly seed: number;
  readonly skewPpm: number;
  readonly temperatureCelsius: number;
  readonly reference: ChannelLabel;
  readonly referenceDistanceMetres: number;
  readonly channels: readonly PracticeChannelTruth[];
}

/** The truth of the practice room of a layout and a seed, at one of its seats. */
export function practiceTruth(layout: Layout, seed: number, seat = 0): PracticeTruth {
  return systemTruth(practiceSystem(layout, seed, seat), layout);
}

/** The truth of a simulated system; the layout's first channel is the reference. */
export function systemTruth(system: PracticeSystem, layout: Layout): PracticeTruth {
  const { room, microphone, speakers, skewPpm, seed } = system;
  const c = soundSpeed(room);
  const [first] = speakers;
  if (!first) throw new RangeError(`layout ${layout.name} has no channels`);
  const referenceDistanceMetres = distanceBetween(first.speaker.position, microphone);
  const channels = speakers.map(({ channel, speaker, bounced }): PracticeChannelTruth => {
    const tapeMetres = distanceBetween(speaker.position, microphone);
    const own = c * speaker.delaySeconds;
    const { f3Hz, f6Hz, f10Hz, box, inverted } = isSub(channel)
      ? truthOf(speaker, [40, 80])
      : truthOf(speaker);
    return {
      channel,
      tapeMetres,
      distanceMetres: tapeMetres + own,
      arrivalSeconds: (tapeMetres + own - referenceDistanceMetres) / c - first.speaker.delaySeconds,
      bounced,
      ceilingPathMetres: bounced ? ceilingPath(room, speaker.position, microphone) + own : null,
      inverted,
      f3Hz,
      f6Hz,
      f10Hz,
      box: box === 'sealed' ? 'closed' : 'vented',
    };
  });
  return {
    layout: layout.name,
    seed,
    skewPpm,
    temperatureCelsius: room.celsius,
    reference: first.channel,
    referenceDistanceMetres,
    channels,
  };
}
