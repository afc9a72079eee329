import type { Fault, Readings } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import { layoutFromName } from '../../../src/system/layout';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';
import { sampleReadings } from '../../components/sample-readings';

/** Faults by speaker, as a test tells them. */
export type ToldFaults = Readonly<Partial<Record<ChannelLabel, Fault['kind']>>>;

/** Readings of a take's speakers with the faults that are told, and no others. */
export function toldReadings(schedule: Schedule, faults: ToldFaults = {}): Readings {
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  const whole = sampleReadings(layout);
  const swept = new Set(schedule.segments.map(({ channel }) => channel));
  return {
    ...whole,
    takeId: schedule.id,
    simulated: false,
    channels: whole.channels
      .filter(({ channel }) => swept.has(channel))
      .map((reading) => {
        const kind = faults[reading.channel];
        if (!kind) return reading;
        const sentence = `${reading.channel}: ${kind}, invented.`;
        return { ...reading, levelDb: null, faults: [{ kind, sentence }] };
      }),
  };
}
