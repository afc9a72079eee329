import { readDecayBands } from '../../dsp/decay/read-decay-bands';
import { schroederFrequency } from '../../dsp/decay/schroeder-frequency';
import { arrivalOf } from './arrival-of';
import type { HeardSource } from './heard-source';
import type { DecayAnswer } from './inspection';

/** What a tape and a plan are off by in a volume, a share of it. */
const volumeShare = 0.1;

/** Decay times by octave, and where the modes of a room of this volume, m³, run together. */
export function answerDecay({ source, response }: HeardSource, volume: number | null): DecayAnswer {
  const { ir, noise } = response;
  const reading = readDecayBands(ir, { noise, arrivalSeconds: arrivalOf(response) });
  const { seconds, interval } = reading.mid.t20;
  const schroeder = schroederFrequency(
    seconds === null || interval === null ? null : { value: seconds, interval },
    volume === null
      ? null
      : { value: volume, interval: [volume * (1 - volumeShare), volume * (1 + volumeShare)] },
  );
  return { kind: 'decay', source, ...reading, schroeder };
}
