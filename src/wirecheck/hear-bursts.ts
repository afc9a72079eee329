import { deconvolveSweep } from '../../dsp/response/deconvolve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { ChannelLabel } from '../system/channel';
import type { Schedule } from '../take/schedule';

/** A channel's burst, divided by what was played: zero delay is the moment it was due. */
export interface HeardBurst {
  readonly channel: ChannelLabel;
  readonly response: ImpulseResponse;
  /** The stop's silence by the same division. */
  readonly noise: ImpulseResponse;
}

/** The longest way through computer, receiver and air that is looked for, seconds. */
export const longestDelaySeconds = 0.9;
const preSeconds = 0.15;
const echoSeconds = 0.4;

/** Deconvolves every burst of a stop, wide enough for any delay of the audio path. */
export function hearBursts(schedule: Schedule, capture: Float64Array): HeardBurst[] {
  const { sampleRate, silence } = schedule;
  const preSamples = Math.round(preSeconds * sampleRate);
  const after = Math.round((longestDelaySeconds + echoSeconds) * sampleRate);
  const lengths = { preSamples, lengthSamples: preSamples + after };
  // Nothing sounds before the wake-up noise, however short the way.
  const quiet = capture.subarray(silence.start, silence.start + silence.length);
  return schedule.segments.map(({ channel, sweep, sweepStart }) => {
    const spec = { ...sweep, sampleRate };
    const whole = new Float64Array(sweep.lengthSamples + lengths.lengthSamples);
    for (let n = 0; n < whole.length; n++) whole[n] = quiet[n % quiet.length] ?? 0;
    return {
      channel,
      response: deconvolveSweep(capture, sweepStart, spec, lengths),
      noise: deconvolveSweep(whole, preSamples, spec, lengths),
    };
  });
}
